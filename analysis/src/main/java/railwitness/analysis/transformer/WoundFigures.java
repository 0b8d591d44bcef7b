package railwitness.analysis.transformer;

import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/**
 * What was measured at a wound transformer, or is meant by its design; what was not measured is empty.
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
 * @param coreWatts core loss at nominal input, W
 * @param kneeVolts input at which the idle current leaves its straight course, V
 */
public record WoundFigures(
        Estimate ratioA,
        Estimate ratioB,
        Estimate primaries,
        Ratio.Polarity primary,
        Ratio.Polarity secondary,
        Estimate primaryA,
        Estimate primaryB,
        Estimate secondaryA,
        Estimate secondaryB,
        Optional<Estimate> inductance,
        Optional<Estimate> coreWatts,
        Optional<Estimate> kneeVolts) {}
