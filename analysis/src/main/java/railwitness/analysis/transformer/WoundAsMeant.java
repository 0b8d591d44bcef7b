package railwitness.analysis.transformer;

import java.util.Optional;
import railwitness.analysis.design.Transformer;

/**
 * What a design leads to expect of the wound transformer.
 *
 * @param primaryTurns of a half
 * @param secondaryTurns of a half
 * @param primaryOhms of a half at 20 degC
 * @param secondaryOhms of a half at 20 degC
 * @param henries magnetising, of a primary half; a core's spreads by 25 %
 * @param coreWatts at nominal input; spreads by 50 %
 * @param kneeVolts input at which the core saturates cold; spreads by 10 %
 */
public record WoundAsMeant(
        int primaryTurns,
        int secondaryTurns,
        double primaryOhms,
        double secondaryOhms,
        double henries,
        double coreWatts,
        double kneeVolts) {

    /**
     * By its sheet; what the sheet states of resistance and core loss counts before what is worked out.
     *
     * @return empty where it gives neither core nor turns
     */
    public static Optional<WoundAsMeant> of(WoundDesign sheet) {
        if (sheet.design().transformer().isEmpty()) {
            return Optional.empty();
        }
        Transformer stated = sheet.design().transformer().get();
        return DesignReport.of(sheet).toroid().map(toroid -> {
            WoundAsMeant meant = of(toroid);
            return new WoundAsMeant(
                    meant.primaryTurns,
                    meant.secondaryTurns,
                    stated.primaryResistanceOhms().orElse(meant.primaryOhms),
                    stated.secondaryResistanceOhms().orElse(meant.secondaryOhms),
                    meant.henries,
                    stated.coreLossWatts().orElse(meant.coreWatts),
                    meant.kneeVolts);
        });
    }

    /** By its design. */
    public static WoundAsMeant of(ToroidDesign design) {
        Windings windings = new Windings(design);
        double nominal = design.drive().nominalVolts();
        return new WoundAsMeant(
                design.primary().turns(),
                design.secondary().turns(),
                windings.ohms(design.primary(), 20),
                windings.ohms(design.secondary(), 20),
                Flux.inductance(design),
                Heat.of(design).coreWatts(),
                nominal * design.core().material().saturationTesla(25) / Flux.peak(design, nominal));
    }
}
