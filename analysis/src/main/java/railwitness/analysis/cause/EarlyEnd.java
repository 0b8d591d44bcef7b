package railwitness.analysis.cause;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Causes of a run that ended before a load was drawn, because the input took too much or a rail did not come up. With the remote turn-on off only
 * what lies straight across the input can draw: a switch. With it on and at once it is a rectifier, its rail, a turn, or a
 * core driven one way; one number does not tell them apart, so each gets its equal share, and something else as much.
 * Where the current was in order and a rail did not come up, it is the drive, or what is the rail's own. A rail that rises
 * beyond its limit without load has more turns behind it than the sheet says, or the primary fewer.
 *
 * <p>Everything that was measured counts: rails that stand clear rectifier, rail and drive, and nobody is accused of a
 * current for which the sheet gives no bound.
 */
public final class EarlyEnd {
    /** Below this a switch leaks, above it is shorted, A. */
    private static final double LEAK_AMPERES = 1;

    private static final List<CauseCode> TOO_MUCH_WHEN_ON =
            List.of(CauseCode.SHORTED_RECTIFIER, CauseCode.SHORTED_TURN, CauseCode.DEAD_DRIVE, CauseCode.REVERSED_HALF);

    /** The same where nobody had looked at the current before the unit was turned on. */
    private static final List<CauseCode> ALL_TOO_MUCH_WHEN_ON = Stream.concat(
                    Stream.of(CauseCode.SHORTED_SWITCH), TOO_MUCH_WHEN_ON.stream())
            .toList();

    /** What draws current though both rails stand. */
    private static final List<CauseCode> TOO_MUCH_WITH_RAILS =
            List.of(CauseCode.SHORTED_TURN, CauseCode.WEAK_CORE, CauseCode.LEAKY_CLAMP);

    private static final List<CauseCode> NO_RAIL = List.of(CauseCode.DEAD_DRIVE, CauseCode.SHORTED_RECTIFIER);

    private static final List<CauseCode> LOW_RAILS = List.of(CauseCode.WRONG_TURNS, CauseCode.DEAD_DRIVE);

    /** From here on a rail is fed; a shorted one stays at its diodes' drop, V. */
    private static final double RUNS_VOLTS = 3;

    /** Rails nearer to each other than this share are alike (common practice, no source). */
    private static final double ALIKE = 0.98;

    private static final List<CauseCode> OWN_OF_RAIL = List.of(CauseCode.SHORTED_RECTIFIER, CauseCode.DEAD_RECTIFIER);

    private static final List<String> BEFORE_LOAD = List.of("standby", "power-up", "no-load");

    private EarlyEnd() {}

    /** Whether the ending says something of itself: it came before any load, or a rail fell under it. */
    public static boolean speaks(EarlyEnding ending) {
        return BEFORE_LOAD.contains(ending.stage()) || underLoad(ending);
    }

    /** Whether a rail that had stood fell under load; the points measured before that may name more. */
    public static boolean fellUnderLoad(EarlyEnding ending) {
        return !BEFORE_LOAD.contains(ending.stage()) && !ending.lowRails().isEmpty();
    }

    /** Whether a load brought it about; the points measured before that may name more. */
    public static boolean underLoad(EarlyEnding ending) {
        return fellUnderLoad(ending) || ending.lostWatts().isPresent();
    }

    /** The causes it leaves. */
    public static List<Cause> causes(EarlyEnding ending) {
        String fact = underLoad(ending)
                ? ending.lostWatts().isPresent() ? lost(ending) : fell(ending)
                : String.format(
                        Locale.ROOT,
                        "input took %.3g A in stage %s with the remote turn-on %s%s",
                        ending.inputAmperes(),
                        ending.stage(),
                        ending.remoteOn() ? "on" : "off",
                        low(ending) + high(ending) + rails(ending));
        List<Suspect> suspects = suspects(ending);
        return suspects.stream()
                .map(suspect -> new Cause(
                        suspect.code(),
                        suspect.rail(),
                        1.0 / (suspects.size() + 1),
                        List.of(fact),
                        List.of(),
                        suspects.stream()
                                .map(Suspect::code)
                                .filter(other -> other != suspect.code())
                                .distinct()
                                .toList()))
                .toList();
    }

    private static String fell(EarlyEnding ending) {
        String rail = ending.lowRails().get(0);
        return String.format(
                Locale.ROOT,
                "the %s rail fell to %.2f V in stage %s, though it stood before",
                rail,
                Math.abs(ending.evidence().railVolts().getOrDefault(rail, 0.0)),
                ending.stage());
    }

    private static String lost(EarlyEnding ending) {
        return String.format(
                Locale.ROOT,
                "in stage %s %.3g W more are lost than the parts may lose, though nothing much was lost without load%s",
                ending.stage(),
                ending.lostWatts().getAsDouble(),
                rails(ending));
    }

    private static String low(EarlyEnding ending) {
        return ending.lowRails().isEmpty()
                ? ""
                : ", and did not come up: " + String.join(", ", ending.lowRails())
                        + (ending.othersUp() ? "; the other rails did" : "");
    }

    private static String rails(EarlyEnding ending) {
        Evidence evidence = ending.evidence();
        return evidence.railVolts().isEmpty()
                ? ""
                : "; the rails read "
                        + evidence.railVolts().entrySet().stream()
                                .map(rail -> String.format(Locale.ROOT, "%s %.3g V", rail.getKey(), rail.getValue()))
                                .collect(Collectors.joining(", "))
                        + (evidence.limiting() ? " while the supply limited its current" : "");
    }

    private static String high(EarlyEnding ending) {
        return ending.highRailVolts().isPresent()
                ? String.format(
                        Locale.ROOT,
                        ", and a rail rose to %.4g V without load",
                        ending.highRailVolts().getAsDouble())
                : "";
    }

    private record Suspect(CauseCode code, Optional<String> rail) {}

    private static List<Suspect> suspects(EarlyEnding ending) {
        if (ending.highRailVolts().isPresent()) {
            return ofUnit(List.of(CauseCode.WRONG_TURNS));
        }
        if (ending.lostWatts().isPresent()) {
            return List.of(new Suspect(CauseCode.SHORT_UNDER_LOAD, lowest(ending)));
        }
        if (fellUnderLoad(ending)) {
            return List.of(
                    new Suspect(CauseCode.HICCUP, Optional.empty()),
                    new Suspect(
                            CauseCode.SHORT_UNDER_LOAD,
                            Optional.of(ending.lowRails().get(0))));
        }
        Evidence evidence = ending.evidence();
        if (!ending.lowRails().isEmpty() && !evidence.limiting()) {
            return ending.othersUp() ? ofRails(ending.lowRails()) : ofUnit(noRail(ending));
        }
        if (!evidence.boundKnown() && (evidence.railsStand() || !evidence.limiting() && !ending.remoteOn())) {
            return List.of();
        }
        if (ending.remoteOn() && !evidence.blocked() && !evidence.railsStand()) {
            return ofUnit(ALL_TOO_MUCH_WHEN_ON);
        }
        if (ending.remoteOn()) {
            return ofUnit(evidence.railsStand() ? TOO_MUCH_WITH_RAILS : TOO_MUCH_WHEN_ON);
        }
        return ofUnit(
                List.of(ending.inputAmperes() < LEAK_AMPERES ? CauseCode.LEAKY_SWITCH : CauseCode.SHORTED_SWITCH));
    }

    /** The rail that a short pulls down most; none where they are alike. */
    private static Optional<String> lowest(EarlyEnding ending) {
        Map<String, Double> volts = ending.evidence().railVolts();
        double highest = volts.values().stream().mapToDouble(Math::abs).max().orElse(0);
        return volts.entrySet().stream()
                .filter(rail -> Math.abs(rail.getValue()) < ALIKE * highest)
                .min(java.util.Comparator.comparingDouble(rail -> Math.abs(rail.getValue())))
                .map(Map.Entry::getKey);
    }

    /** Rails that stand, but lower than they should: no short, and both sides of the drive may work. */
    private static List<CauseCode> noRail(EarlyEnding ending) {
        var volts = ending.evidence().railVolts().values();
        boolean all = volts.size() >= ending.lowRails().size()
                && !volts.isEmpty()
                && volts.stream().allMatch(each -> Math.abs(each) >= RUNS_VOLTS);
        return all ? LOW_RAILS : NO_RAIL;
    }

    private static List<Suspect> ofUnit(List<CauseCode> codes) {
        return codes.stream().map(code -> new Suspect(code, Optional.empty())).toList();
    }

    /** The transformer and its drive work, for others come up: what is left is the rail's own. */
    private static List<Suspect> ofRails(List<String> rails) {
        return rails.stream()
                .flatMap(rail -> OWN_OF_RAIL.stream().map(code -> new Suspect(code, Optional.of(rail))))
                .toList();
    }
}
