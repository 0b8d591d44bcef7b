package railwitness.analysis.cause;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Causes of a run that ended before a load was drawn, because the input took too much. With the remote turn-on off only
 * what lies straight across the input can draw: a switch. With it on and at once it is a rectifier, its rail, a turn, or a
 * core driven one way; one number does not tell them apart, so each gets its equal share, and something else as much.
 */
public final class EarlyEnd {
    /** Below this a switch leaks, above it is shorted, A. */
    private static final double LEAK_AMPERES = 1;

    private static final List<String> BEFORE_LOAD = List.of("standby", "power-up", "no-load");

    private EarlyEnd() {}

    /** Whether the ending came before any load, so that it says something of itself. */
    public static boolean speaks(Ending ending) {
        return BEFORE_LOAD.contains(ending.stage());
    }

    /** The causes it leaves. */
    public static List<Cause> causes(Ending ending) {
        String fact = String.format(
                Locale.ROOT,
                "input took %.3g A in stage %s with the remote turn-on %s",
                ending.inputAmperes(),
                ending.stage(),
                ending.remoteOn() ? "on" : "off");
        List<CauseCode> codes = codes(ending);
        return codes.stream()
                .map(code -> new Cause(
                        code,
                        Optional.empty(),
                        1.0 / (codes.size() + 1),
                        List.of(fact),
                        List.of(),
                        codes.stream().filter(other -> other != code).toList()))
                .toList();
    }

    private static List<CauseCode> codes(Ending ending) {
        if (ending.remoteOn()) {
            return List.of(CauseCode.SHORTED_RECTIFIER, CauseCode.SHORTED_TURN, CauseCode.DEAD_DRIVE);
        }
        return List.of(ending.inputAmperes() < LEAK_AMPERES ? CauseCode.LEAKY_SWITCH : CauseCode.SHORTED_SWITCH);
    }
}
