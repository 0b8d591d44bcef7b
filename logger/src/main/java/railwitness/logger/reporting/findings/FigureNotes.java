package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Contribution;
import railwitness.analysis.uncertainty.Estimate;

/** What stands below the figures: how each is defined, and what its uncertainty comes from. */
final class FigureNotes {
    private static final int MOST_NAMED = 3;

    private FigureNotes() {}

    static List<String> of(List<FigureRow> rows) {
        List<String> lines = new ArrayList<>();
        Set<FigureName> named = new LinkedHashSet<>();
        Set<String> told = new LinkedHashSet<>();
        for (FigureRow row : rows) {
            if (named.add(row.name())) {
                lines.add(row.name().word() + ": " + row.name().definition());
            }
            if (told.add(row.label())) {
                Estimate value = row.value().orElseThrow();
                lines.add("  "
                        + String.join(
                                "; ",
                                List.of(row.rail().map(rail -> rail + ": ").orElse("") + row.at(), k(row), from(value))
                                        .stream()
                                        .filter(part -> !part.isEmpty())
                                        .toList()));
            }
        }
        return lines;
    }

    private static String k(FigureRow row) {
        String probability = row.verdict()
                .filter(verdict -> verdict.probability().isPresent())
                .map(verdict -> String.format(
                        Locale.ROOT,
                        ", conforms with probability %.3f",
                        verdict.probability().getAsDouble()))
                .orElse("");
        return row.kText().isEmpty() ? "" : "k " + row.kText() + probability;
    }

    /** The largest contributions by their share of the variance; nothing for an exact value. */
    private static String from(Estimate value) {
        double u = value.u();
        if (u == 0) {
            return "";
        }
        String what = value.known() ? "u" : "scatter";
        return String.format(Locale.ROOT, "%s %.2g, from ", what, u)
                + value.contributions().stream()
                        .limit(MOST_NAMED)
                        .map(part -> share(part, u))
                        .collect(Collectors.joining(", "))
                + (value.contributions().size() > MOST_NAMED ? " and others" : "");
    }

    private static String share(Contribution part, double u) {
        return String.format(Locale.ROOT, "%s %.0f %%", part.name(), 100 * Math.pow(part.u() / u, 2));
    }
}
