package railwitness.analysis.transformer;

import java.util.Optional;
import railwitness.analysis.design.Transformer;

/**
 * What a design leads to expect of the wound transformer. What the sheet does not give accuses nobody: resistances and core
 * loss are infinite then, inductance and knee 0.
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

    private static final double UNKNOWN = Double.POSITIVE_INFINITY;

    /**
     * By its sheet; what the sheet states of resistance and core loss counts before what is worked out.
     *
     * @return empty where it gives no turns
     */
    public static Optional<WoundAsMeant> of(WoundDesign sheet) {
        if (sheet.design().transformer().isEmpty()) {
            return Optional.empty();
        }
        Transformer stated = sheet.design().transformer().get();
        WoundAsMeant meant =
                DesignReport.of(sheet).toroid().map(WoundAsMeant::of).orElseGet(() -> turnsAlone(stated));
        return Optional.of(new WoundAsMeant(
                meant.primaryTurns,
                meant.secondaryTurns,
                stated.primaryResistanceOhms().orElse(meant.primaryOhms),
                stated.secondaryResistanceOhms().orElse(meant.secondaryOhms),
                meant.henries,
                stated.coreLossWatts().orElse(meant.coreWatts),
                meant.kneeVolts));
    }

    private static WoundAsMeant turnsAlone(Transformer stated) {
        int turns = stated.primaryTurns();
        return new WoundAsMeant(
                turns,
                stated.secondaryTurns(),
                UNKNOWN,
                UNKNOWN,
                stated.inductancePerTurnSquaredNanohenries().orElse(0) * 1e-9 * turns * turns,
                UNKNOWN,
                0);
    }

    /** Whether a value of these is known. */
    static boolean known(double value) {
        return value > 0 && value < UNKNOWN;
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
