package railwitness.analysis.transformer;

import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What was measured at a wound transformer; what was not measured is empty, and a polarity unclear.
 *
 * @param ratioA secondary half A over primary half A
 * @param ratioB secondary half B over primary half A
 * @param primaries primary half B over primary half A
 * @param primary polarity of the primary halves in series
 * @param secondary polarity of the secondary halves in series
 * @param primaryA resistance at 20 degC, ohm
 * @param primaryB resistance at 20 degC, ohm
 * @param secondaryA resistance at 20 degC, ohm
 * @param secondaryB resistance at 20 degC, ohm
 * @param inductance magnetising, of a primary half, H
 * @param inPhase share of the open primary's current that is in phase with its voltage, 0 to 1
 * @param coreWatts core loss at nominal input, W
 * @param kneeVolts input at which the idle current leaves its straight course, V
 */
public record WoundFigures(
        Optional<Estimate> ratioA,
        Optional<Estimate> ratioB,
        Optional<Estimate> primaries,
        Ratio.Polarity primary,
        Ratio.Polarity secondary,
        Optional<Estimate> primaryA,
        Optional<Estimate> primaryB,
        Optional<Estimate> secondaryA,
        Optional<Estimate> secondaryB,
        Optional<Estimate> inductance,
        Optional<Estimate> inPhase,
        Optional<Estimate> coreWatts,
        Optional<Estimate> kneeVolts) {}
