package railwitness.analysis.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.soak.SoakRecord;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.transformer.WoundReport;

/**
 * What else is known of how the points were taken.
 *
 * @param ripple bands of the ripple meters, waveforms
 * @param leadOhms resistance from the source to the unit's terminals, ohm, as the bench sheet has it
 * @param ending where the run ended early because the input took too much
 * @param soak what was read while a load was held, where one was
 * @param wound the transformer by itself, where it was measured
 */
public record Circumstances(
        RippleMeans ripple,
        OptionalDouble leadOhms,
        Optional<EarlyEnding> ending,
        Optional<SoakRecord> soak,
        Optional<WoundReport> wound) {
    /** Nothing was held, and no transformer measured by itself. */
    public Circumstances(RippleMeans ripple, OptionalDouble leadOhms, Optional<EarlyEnding> ending) {
        this(ripple, leadOhms, ending, Optional.empty(), Optional.empty());
    }

    /** Nothing else is known. */
    public static Circumstances unknown() {
        return new Circumstances(RippleMeans.unknown(), OptionalDouble.empty(), Optional.empty());
    }
}
