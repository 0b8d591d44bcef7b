package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Contribution;
import railwitness.analysis.uncertainty.Estimate;

/** What stands below the figures: how each is defined, and what its uncertainty comes from. */
final class FigureNotes {
    private static final int MOST_NAMED = 3;

    private FigureNotes() {}

    static List<String> of(List<Figure> figures) {
        List<String> lines = new ArrayList<>();
        Set<FigureName> named = new LinkedHashSet<>();
        for (Figure figure : figures) {
            if (named.add(figure.name())) {
                lines.add(figure.name().word() + ": " + figure.definition());
            }
            String from = from(figure.value());
            if (!from.isEmpty()) {
                lines.add("  " + figure.rail().map(rail -> rail + ": ").orElse("") + from);
            }
        }
        return lines;
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
