package railwitness.logger.recording.rehearsal;

import java.util.List;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Rail;
import railwitness.drivers.converter.Specimen;

/**
 * The sound unit that a design sheet describes, as physical parameters. What the sheet does not know is taken from the
 * usual kind, made as large and wound as high as the sheet's rails and loads want it.
 */
public final class SpecimenMaker {
    /** Drop-out lies this share below the start voltage (hysteresis; common practice, no source). */
    private static final double DROP_OUT_SHARE = 0.9;

    private static final double VOLTS_PER_LN = 0.0284;
    private static final double CHOKE_FILTER_HENRY = 40e-6;

    private final Design design;
    private final Specimen usual;

    private SpecimenMaker(Design design) {
        this.design = design;
        this.usual = UsualUnit.of(design);
    }

    /** @param leadOhm from the source to the unit's terminals, both leads, ohm */
    public static Specimen of(Design design, double leadOhm) {
        SpecimenMaker maker = new SpecimenMaker(design);
        return maker.usual
                .withDrive(maker.drive())
                .withInput(maker.input(leadOhm))
                .withTransformer(maker.transformer())
                .withSides(maker.side(), maker.side())
                .withRectifier(maker.rectifier())
                .withRails(
                        design.converter().filter() == FilterInput.CAPACITOR
                                ? Specimen.Filter.CAPACITOR
                                : Specimen.Filter.CHOKE,
                        maker.rails());
    }

    private Specimen.Drive drive() {
        var converter = design.converter();
        Specimen.Drive known = usual.drive();
        double start = converter.startVolts().orElse(known.startVolts());
        double regulated = design.rails().stream()
                .mapToDouble(rail -> Math.abs(rail.nominalVolts()))
                .average()
                .orElseThrow();
        return new Specimen.Drive(
                converter.frequencyHz().orElse(known.frequencyHz()),
                Math.min(0.495, converter.duty().orElse(known.duty())),
                start,
                start * DROP_OUT_SHARE,
                known.softStartSeconds(),
                converter.controlAmperes().orElse(known.controlAmps()),
                design.switches().isPresent()
                        ? design.switches().get().gateAndSwitchingWatts().orElse(known.gateWatts())
                        : known.gateWatts(),
                known.standbyAmps(),
                converter.regulated() ? OptionalDouble.of(regulated) : OptionalDouble.empty());
    }

    /** Turns of this rail over those of the transformer's secondary; from its nominal where the sheet knows no turns. */
    private double share(Rail rail) {
        if (design.transformer().isPresent()) {
            return design.ratio(rail).orElseThrow() / design.transformer().get().ratio();
        }
        return rail.nominalMagnitude() / UsualUnit.highestNominal(design);
    }

    /** A rail that holds itself behind an unregulated converter. */
    private OptionalDouble held(Rail rail) {
        return design.regulates(rail) && !design.converter().regulated()
                ? OptionalDouble.of(rail.nominalMagnitude())
                : OptionalDouble.empty();
    }

    private Specimen.Input input(double leadOhm) {
        return new Specimen.Input(
                Math.max(1e-4, leadOhm),
                design.input().capacitorMicrofarads().orElse(usual.input().capacitorFarad() * 1e6) * 1e-6,
                design.input().capacitorEsrOhms().orElse(usual.input().capacitorEsrOhm()));
    }

    private Specimen.Transformer transformer() {
        Specimen.Transformer known = usual.transformer();
        if (design.transformer().isEmpty()) {
            return known;
        }
        var sheet = design.transformer().get();
        double turns = sheet.primaryTurns();
        double nominal = design.input().nominalVolts();
        double frequency = design.converter().frequencyHz().orElse(usual.drive().frequencyHz());
        double ratio = sheet.ratio();
        // One seventh of the leakage belongs to a secondary half, the rest to the shared primary, which both rails'
        // currents pass at the square of the ratio: the split of a bifilar toroid (common practice, no source).
        double leakage = sheet.leakageNanohenries().isPresent()
                ? sheet.leakageNanohenries().getAsDouble() * 1e-9
                : known.secondaryLeakageHenry() * 7;
        double secondaryLeakage = leakage / 7;
        double saturation = sheet.coreAreaSquareMillimetres().isPresent()
                ? turns
                        * sheet.coreAreaSquareMillimetres().getAsDouble()
                        * 1e-6
                        * sheet.highestFluxTesla().orElse(0.3)
                : 4 * nominal * design.converter().duty().orElse(usual.drive().duty()) / frequency / 2;
        double coreWatts = sheet.coreLossWatts().orElse(nominal * nominal / known.coreOhm());
        return new Specimen.Transformer(
                turns,
                sheet.secondaryTurns(),
                sheet.secondaryTurns(),
                Math.max(1e-6, sheet.primaryResistanceOhms().orElse(known.primaryOhm())),
                Math.max(1e-6, sheet.secondaryResistanceOhms().orElse(known.secondaryOhm1())),
                Math.max(1e-6, sheet.secondaryResistanceOhms().orElse(known.secondaryOhm2())),
                (leakage - secondaryLeakage) / (2 * ratio * ratio),
                secondaryLeakage,
                sheet.inductancePerTurnSquaredNanohenries().orElse(5000) * 1e-9 * turns * turns,
                saturation,
                coreWatts > 0 ? nominal * nominal / coreWatts : Specimen.OPEN_OHM,
                known.shortedTurnOhm(),
                known.peakCharging(),
                known.ringAmps(),
                known.copperPerKelvin());
    }

    private Specimen.Switch side() {
        Specimen.Switch known = usual.side1();
        double on = design.switches().isPresent()
                ? design.switches().get().onResistanceOhms().orElse(known.onOhm())
                : known.onOhm();
        return new Specimen.Switch(Math.max(1e-5, on), known.perKelvin(), known.offOhm(), true);
    }

    /** The sheet's straight line through the drop at 1 A and above, as a diode that has a bend below. */
    private Specimen.Rectifier rectifier() {
        Specimen.Rectifier known = usual.rectifier();
        if (design.rectifier().isEmpty()) {
            return known;
        }
        var sheet = design.rectifier().get();
        return new Specimen.Rectifier(
                sheet.dropVolts().orElse(known.dropVolts()),
                sheet.slopeOhms().orElse(known.slopeOhm()),
                VOLTS_PER_LN,
                known.dropPerKelvin());
    }

    private List<Specimen.Rail> rails() {
        Specimen.Rail known = usual.rails().get(0);
        boolean choke = design.converter().filter() == FilterInput.CHOKE;
        double chokeHenry = CHOKE_FILTER_HENRY
                * known.chokeHenry()
                / Specimen.usual().rails().get(0).chokeHenry();
        var filter = design.filter();
        double henry = filter.isPresent() && filter.get().chokeMicrohenries().isPresent()
                ? filter.get().chokeMicrohenries().getAsDouble() * 1e-6
                : choke ? chokeHenry : 0;
        return design.rails().stream()
                .map(rail -> new Specimen.Rail(
                        rail.name(),
                        rail.nominalVolts() < 0,
                        henry,
                        filter.isPresent() ? filter.get().chokeResistanceOhms().orElse(0.004) : 0.004,
                        filter.isPresent()
                                ? filter.get().capacitorMicrofarads().orElse(known.capacitorFarad() * 1e6) * 1e-6
                                : known.capacitorFarad(),
                        filter.isPresent()
                                ? filter.get().capacitorEsrOhms().orElse(known.capacitorEsrOhm())
                                : known.capacitorEsrOhm(),
                        filter.isPresent() ? filter.get().bleederOhms().orElse(known.bleederOhm()) : known.bleederOhm(),
                        0,
                        0,
                        Specimen.OPEN_OHM,
                        share(rail),
                        held(rail)))
                .toList();
    }
}
