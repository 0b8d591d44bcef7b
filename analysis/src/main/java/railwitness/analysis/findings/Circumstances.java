package railwitness.analysis.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.soak.SoakRecord;
import railwitness.analysis.supply.RippleMeans;

/**
 * What else is known of how the points were taken.
 *
 * @param ripple bands of the ripple meters, waveforms
 * @param leadOhms resistance from the source to the unit's terminals, ohm, as the bench sheet has it
 * @param ending where the run ended early because the input took too much
 * @param soak what was read while a load was held, where one was
 */
public record Circumstances(
        RippleMeans ripple, OptionalDouble leadOhms, Optional<EarlyEnding> ending, Optional<SoakRecord> soak) {
    /** Nothing was held. */
    public Circumstances(RippleMeans ripple, OptionalDouble leadOhms, Optional<EarlyEnding> ending) {
        this(ripple, leadOhms, ending, Optional.empty());
    }

    /** Nothing else is known. */
    public static Circumstances unknown() {
        return new Circumstances(RippleMeans.unknown(), OptionalDouble.empty(), Optional.empty());
    }
}
