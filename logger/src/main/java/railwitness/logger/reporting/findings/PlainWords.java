package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.cause.Explained;
import railwitness.analysis.expected.Deviation;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionState;

/**
 * What a session found, as one would tell a colleague.
 *
 * @param verdict the unit's verdict and why, a sentence
 * @param off what differs from the sheet's expectation, the largest first, or that nothing does
 * @param why what explains it, and what to check first; empty where nothing is off
 */
public record PlainWords(String verdict, String off, String why) {
    private static final int MOST_OFF = 4;
    private static final int MOST_CAUSES = 3;
    private static final double MILLI = 1000;
    private static final String THIS_RAIL = "this rail";

    public static PlainWords of(SessionFindings session) {
        return new PlainWords(verdict(session), off(session), why(session.findings()));
    }

    /** All in one paragraph. */
    public String text() {
        return List.of(verdict, off, why).stream()
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private static String verdict(SessionFindings session) {
        Findings findings = session.findings();
        String words =
                switch (findings.verdict()) {
                    case FIT -> "Fit to return";
                    case NOT_FIT -> "Not fit to return";
                    case NOT_JUDGED -> "Not judged";
                };
        List<String> reasons = new ArrayList<>();
        if (session.state() == SessionState.TRIPPED) {
            reasons.add("the run tripped: "
                    + session.events().stream()
                            .filter(event -> event.is(EventKind.TRIP))
                            .findFirst()
                            .map(EventEntry::text)
                            .orElse("it ended by itself"));
        } else if (session.state() != SessionState.COMPLETE) {
            reasons.add("the run was not finished (" + session.state().word() + ")");
        }
        if (!findings.contradictions().isEmpty()) {
            reasons.add("readings cannot all be true: "
                    + findings.contradictions().get(0).text());
        }
        reasons.add(requirements(findings));
        if (findings.verdict() == Fitness.FIT && findings.against().explained() != Explained.NOTHING_OFF) {
            reasons.add("yet something is not as it should be");
        }
        return words + ": " + String.join("; ", reasons) + ".";
    }

    private static String requirements(Findings findings) {
        int all = findings.verdicts().size();
        if (all == 0) {
            return "no requirements to judge by";
        }
        String failed = labels(findings, true);
        String open = labels(findings, false);
        String met = failed.isEmpty() && open.isEmpty()
                ? "all " + all + " requirements met"
                : findings.verdicts().stream()
                                .filter(one ->
                                        one.outcome() == Outcome.PASS || one.outcome() == Outcome.CONDITIONAL_PASS)
                                .count()
                        + " of " + all + " requirements met";
        return met + (failed.isEmpty() ? "" : ", failed: " + failed) + (open.isEmpty() ? "" : ", not judged: " + open);
    }

    private static String labels(Findings findings, boolean unfit) {
        List<String> names = FigureRow.judged(findings).stream()
                .filter(row -> unfit ? row.unfit() : row.outcome().equals(Optional.of(Outcome.NOT_JUDGED)))
                .map(row -> row.rail().isPresent()
                        ? row.name().word() + " of " + row.rail().get()
                        : row.name().word())
                .distinct()
                .toList();
        return names.size() <= MOST_OFF
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, MOST_OFF - 1)) + " and " + (names.size() - MOST_OFF + 1) + " more";
    }

    private static String off(SessionFindings session) {
        Findings findings = session.findings();
        if (session.design().isEmpty()) {
            return "Without a design sheet nothing can be expected of the unit.";
        }
        if (findings.points().isEmpty() && session.wound().isPresent()) {
            return findings.causes().isEmpty()
                    ? "What was measured of the transformer is as its design leads to expect."
                    : "Off: " + findings.causes().get(0).supports().get(0) + ".";
        }
        if (findings.points().isEmpty()) {
            return "No step was measured.";
        }
        List<Deviation> deviations = findings.against().deviations();
        if (deviations.isEmpty()) {
            return findings.causes().stream()
                    .flatMap(cause -> cause.supports().stream())
                    .findFirst()
                    .map(support -> "Off: " + support + ".")
                    .orElseGet(() -> nothingOff(session));
        }
        Map<String, Deviation> largest = new LinkedHashMap<>();
        deviations.forEach(one -> largest.putIfAbsent(subject(one), one));
        String told =
                largest.values().stream().limit(MOST_OFF).map(PlainWords::words).collect(Collectors.joining("; "));
        int more = largest.size() - MOST_OFF;
        return "Off: " + told + (more > 0 ? "; and " + more + " more" : "") + ".";
    }

    private static String nothingOff(SessionFindings session) {
        Findings findings = session.findings();
        List<String> open = new ArrayList<>();
        var expected = findings.points().stream().map(findings.against()::at).toList();
        if (expected.stream()
                .allMatch(at -> at.values().isEmpty() && at.unbounded().isEmpty())) {
            return "No step was measured with the unit on.";
        }
        for (String what : List.of("voltage", "ripple", "loss")) {
            boolean bounded = expected.stream()
                    .flatMap(at -> at.values().keySet().stream())
                    .anyMatch(key -> key.endsWith(what));
            if (!bounded) {
                open.add(what.equals("voltage") ? "the rails" : what);
            }
        }
        return (open.size() == 3
                        ? "The design sheet says too little to expect anything of the readings"
                        : session.state() == SessionState.TRIPPED
                                ? "The steps measured before that are as the design sheet leads to expect; what made the run"
                                        + " trip is not explained by them"
                                : "Nothing is off: what was measured is as the design sheet leads to expect")
                + (open.isEmpty() || open.size() == 3 ? "" : " (it does not bound " + String.join(" and ", open) + ")")
                + ".";
    }

    /** Such as "plus rail 14.7 V at full load, expected 38.2 +- 1.1 V". */
    public static String words(Deviation deviation) {
        double scale = scale(deviation);
        String unit = unit(deviation);
        Estimate measured = magnitude(deviation.measured(), deviation).scale(scale);
        Rounding expected =
                FigureRow.rounded(magnitude(deviation.expected(), deviation).scale(scale));
        return String.format(
                Locale.ROOT,
                "%s %s %s %s, expected %s %s",
                subject(deviation),
                Rounding.of(
                                measured.value(),
                                Math.max(
                                        Math.abs(measured.value()) * 1e-3,
                                        expected.uncertainty().doubleValue() / 10))
                        .valueText(),
                unit,
                where(deviation),
                expected,
                unit);
    }

    /** Magnitudes speak plainer, unless the sign itself is wrong. */
    private static Estimate magnitude(Estimate value, Deviation deviation) {
        return deviation.measured().value() * deviation.expected().value() < 0 ? value : value.abs();
    }

    private static double scale(Deviation deviation) {
        return switch (deviation.what()) {
            case "ripple" -> MILLI;
            case "efficiency" -> 100;
            default -> 1;
        };
    }

    private static String unit(Deviation deviation) {
        return switch (deviation.what()) {
            case "ripple" -> "mV";
            case "efficiency" -> "%";
            default -> deviation.unit();
        };
    }

    private static String subject(Deviation deviation) {
        String rail = deviation.rail().orElse("");
        return switch (deviation.what()) {
            case "voltage" -> rail + " rail";
            case "ripple" -> "ripple of " + rail;
            case "input.current" -> "input current";
            default -> deviation.what();
        };
    }

    private static String where(Deviation deviation) {
        String step = deviation.step();
        return switch (deviation.stage()) {
            case "no-load" -> "without load";
            case "load-sweep" -> step.equals("100 %") ? "at full load" : "at " + step + " load";
            case "line-sweep" -> "with the input at " + step;
            case "cross-load" -> "with " + step + " load";
            default -> "at " + deviation.stage() + " " + step;
        };
    }

    private static String why(Findings findings) {
        return switch (findings.against().explained()) {
            case NOTHING_OFF -> "";
            case NO_KNOWN_FAULT ->
                findings.contradictions().isEmpty()
                        ? "No known fault stands out as its cause."
                        : "No cause is named while readings contradict each other.";
            case BY_A_CAUSE -> causes(findings.causes());
        };
    }

    private static String causes(List<Cause> causes) {
        Cause first = causes.get(0);
        String others = causes.stream()
                .filter(cause -> !named(cause).equals(named(first)))
                .limit(MOST_CAUSES - 1L)
                .map(PlainWords::cause)
                .distinct()
                .collect(Collectors.joining(", "));
        return "Most likely: " + cause(first) + "." + (others.isEmpty() ? "" : " Less likely: " + others + ".")
                + " Check first: " + first.checkNext() + ".";
    }

    private static String named(Cause cause) {
        String text = cause.rail()
                .map(rail -> cause.text().contains(THIS_RAIL)
                        ? cause.text().replace(THIS_RAIL, "the " + rail + " rail")
                        : cause.text() + ", " + rail + " rail")
                .orElse(cause.text());
        return text + cause.place().map(place -> ", " + place).orElse("");
    }

    /** Nobody is surer of a cause than 99 in 100 before it was found. */
    private static String cause(Cause cause) {
        long in100 = Math.max(1, Math.min(99, Math.round(100 * cause.share())));
        return named(cause) + " (" + in100 + " in 100)";
    }
}
