package railwitness.logger.reporting.findings;

import java.util.List;
import java.util.random.RandomGenerator;
import railwitness.drivers.converter.Specimen;

/** Units of the same design, as they come: every part a little off its sheet. */
final class UnitDraw {
    private static final double RESISTANCES = 0.05;
    private static final double CAPACITORS = 0.1;
    private static final double DROP = 0.02;

    private UnitDraw() {}

    /** Each part drawn evenly from within its tolerance: resistances 5 %, capacitors 10 %, diode drops 2 %. */
    static Specimen of(Specimen sheet, RandomGenerator random) {
        var core = sheet.transformer();
        double secondary = core.secondaryOhm1() * near(random, RESISTANCES);
        var transformer = core.withSecondaryOhm(secondary, secondary * near(random, RESISTANCES / 5))
                .withCore(
                        core.magnetisingHenry() * near(random, CAPACITORS),
                        core.saturationVoltSeconds(),
                        core.coreOhm() * near(random, RESISTANCES));
        var side = sheet.side1();
        double on = side.onOhm() * near(random, RESISTANCES);
        var diode = sheet.rectifier();
        double capacitor = near(random, CAPACITORS);
        double esr = near(random, CAPACITORS);
        List<Specimen.Rail> rails = sheet.rails().stream()
                .map(rail -> rail.withCapacitor(
                        rail.capacitorFarad() * capacitor * near(random, CAPACITORS / 5),
                        rail.capacitorEsrOhm() * esr * near(random, CAPACITORS / 5)))
                .toList();
        return sheet.withTransformer(transformer)
                .withSides(
                        new Specimen.Switch(on, side.perKelvin(), side.offOhm(), side.driven()),
                        new Specimen.Switch(
                                on * near(random, RESISTANCES / 5), side.perKelvin(), side.offOhm(), side.driven()))
                .withRectifier(new Specimen.Rectifier(
                        diode.dropVolts() * near(random, DROP),
                        diode.slopeOhm() * near(random, RESISTANCES),
                        diode.logVolts(),
                        diode.dropPerKelvin()))
                .withRails(sheet.filter(), rails);
    }

    private static double near(RandomGenerator random, double share) {
        return 1 + share * (2 * random.nextDouble() - 1);
    }
}
