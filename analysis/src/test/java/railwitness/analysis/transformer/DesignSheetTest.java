package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class DesignSheetTest {
    private static final CoreMaterial FERRITE = Materials.named("power ferrite").orElseThrow();
    private static final List<RailLoad> RAILS = List.of(new RailLoad(35, 4), new RailLoad(-35, 4));

    private static Core core(double areaSquareMillimetres) {
        return new Core(
                0.050, 0.030, 0.020, OptionalDouble.of(areaSquareMillimetres * 1e-6), OptionalDouble.of(5e-6), FERRITE);
    }

    private static ToroidDesign design(Core core, int primary, int secondary, Drive drive) {
        return new ToroidDesign(
                core,
                new Winding(primary, new Wire(0.7e-3, 12)),
                new Winding(secondary, new Wire(0.7e-3, 4)),
                drive,
                RAILS,
                40,
                105,
                OptionalDouble.of(75),
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }

    private static double value(ToroidDesign design, String line) {
        return DesignSheet.of(design).line(line).orElseThrow().value();
    }

    /** 12 V to +-20 V car-audio article, 5 + 5 turns, 1.25 cm^2: 0.096 T at 12 V, 50 kHz; 0.144 T at 14.4 V, 40 kHz. */
    @Test
    void fluxOfAPublishedCarAudioTransformer() {
        Drive at50 = new Drive(50e3, 0.5, 11, 12, 12, true);
        assertThat(value(design(core(125), 5, 10, at50), "flux density")).isCloseTo(0.096, within(0.0005));
        Drive at40 = new Drive(40e3, 0.5, 11, 12, 14.4, true);
        assertThat(value(design(core(125), 5, 10, at40), "flux density")).isCloseTo(0.144, within(0.0005));
    }

    /** 250 W inverter example: 10.5 V, 50 kHz, 1.25 cm^2 and 3 turns come to 0.14 T (1400 gauss). */
    @Test
    void fluxOfAPublishedInverterTransformer() {
        Drive drive = new Drive(50e3, 0.5, 10.5, 10.5, 10.5, true);
        assertThat(value(design(core(125), 3, 96, drive), "flux density")).isCloseTo(0.14, within(0.0005));
    }

    @Test
    void withoutASoftStartTheFirstHalfCycleSwingsTwiceAsFar() {
        Drive hard = new Drive(25e3, 0.45, 10.5, 13.8, 14.4, false);
        ToroidDesign design = design(core(200), 4, 12, hard);
        assertThat(value(design, "flux density of the first half-cycle"))
                .isCloseTo(2 * value(design, "flux density"), within(1e-12));
    }

    /** N^2 AL: 4 turns on 5000 nH are 80 uH. */
    @Test
    void magnetisingInductance() {
        Drive drive = new Drive(25e3, 0.45, 10.5, 13.8, 14.4, true);
        assertThat(value(design(core(200), 4, 12, drive), "magnetising inductance of a primary half"))
                .isCloseTo(80, within(1e-9));
    }

    /**
     * The same supply without load in a circuit simulator (ngspice 39, 4 turns on 5000 nH, 13.8 V, 25 kHz, duty 0.45, coupled
     * windings, body diodes, rectifiers on their rails): peak 1.705 A with snubbers and 1.781 A without, mean of the magnitude
     * 0.862 A. The winding swings on in the pauses, so a duty of a half is nearer than the driven 0.45 (1.55 A); a triangle's
     * mean is half its peak; and what the supply gives, 0.398 A in all, is control, gates, bleeders and core loss: the
     * magnetising current itself goes back through the body diodes.
     */
    @Test
    void idleMagnetisingCurrentIsThatOfTheSimulator() {
        Drive drive = new Drive(25e3, 0.45, 10.5, 13.8, 14.4, true);
        ToroidDesign design = design(core(200), 4, 12, drive);
        double idle = value(design, "magnetising current without load, peak");
        assertThat(idle).isCloseTo(1.705, within(0.05 * 1.705)).isCloseTo(1.781, within(0.05 * 1.781));
        assertThat(idle / 2).isCloseTo(0.862, within(0.01 * 0.862));
        assertThat(value(design, "magnetising current, peak")).isLessThan(0.95 * 1.705);
    }

    /**
     * Six supplies without load in a circuit simulator (ngspice 39, snubbers of 10 nF, body diodes, secondaries open): turns,
     * nH of one turn, Hz, V, duty, peak A. It lies between what the driven time alone gives and what swinging on through
     * the whole of the pauses gives; a small current (the last) takes a good part of the pause to move the snubbers.
     */
    @Test
    void idleCurrentOfSixSimulatedSupplies() {
        double[][] simulated = {
            {4, 5000, 25e3, 13.8, 0.45, 1.683},
            {3, 5000, 25e3, 13.8, 0.45, 3.038},
            {5, 3000, 30e3, 13.8, 0.45, 1.480},
            {3, 4200, 40e3, 14.4, 0.40, 2.324},
            {4, 2400, 20e3, 12.0, 0.47, 3.892},
            {6, 6000, 33e3, 13.0, 0.35, 0.389},
        };
        for (double[] one : simulated) {
            int turns = (int) one[0];
            Core core =
                    new Core(0.050, 0.030, 0.020, OptionalDouble.of(200e-6), OptionalDouble.of(one[1] * 1e-9), FERRITE);
            Drive drive = new Drive(one[2], one[4], 10.5, one[3], one[3], true);
            ToroidDesign design = design(core, turns, 3 * turns, drive);
            double idle = value(design, "magnetising current without load, peak");
            double driven = value(design, "magnetising current, peak");
            assertThat(one[5]).as("%d turns", turns).isBetween(driven, idle);
            assertThat(idle / one[5]).as("%d turns", turns).isBetween(1.0, one[5] < 1 ? 1.18 : 1.04);
        }
    }

    /** Too few turns: the core is what limits, and the sheet says so. */
    @Test
    void aCoreTooSmallIsNamedAsTheLimit() {
        Drive drive = new Drive(25e3, 0.45, 10.5, 13.8, 14.4, true);
        DesignSheet sheet = DesignSheet.of(design(core(60), 2, 6, drive));
        assertThat(sheet.holds()).isFalse();
        assertThat(sheet.limiting().orElseThrow().name()).startsWith("flux density");
    }

    /** IEC 60205 ring core: le of 50 x 30 mm is pi 20 / ln(5/3) = 123.0 mm. */
    @Test
    void pathOfARing() {
        assertThat(core(200).pathMetres() * 1e3).isCloseTo(123.0, within(0.1));
    }

    /** Every proposal keeps every limit; more power never gets by with less loss. */
    @Test
    void proposalsKeepTheirLimits() {
        Drive drive = new Drive(25e3, 0.45, 10.5, 13.8, 14.4, true);
        double before = 0;
        for (double amps : new double[] {1, 2, 4}) {
            List<RailLoad> rails = List.of(new RailLoad(35, amps), new RailLoad(-35, amps));
            List<DesignSheet> sheets =
                    new Proposal(core(200), drive, 13.8, rails, 40, 105, OptionalDouble.empty()).all();
            assertThat(sheets).isNotEmpty().allMatch(DesignSheet::holds);
            ToroidDesign best = sheets.get(0).design();
            assertThat(best.ratio() * 13.8).isGreaterThan(35);
            double loss = sheets.get(0).lines().stream()
                    .filter(line -> line.name().contains("loss"))
                    .mapToDouble(DesignLine::value)
                    .sum();
            assertThat(loss).isGreaterThan(before);
            before = loss;
        }
    }

    /** The trade's own: fewer secondary turns step down, more step up (common practice, no source). */
    @Test
    void highRailsNeedMoreSecondaryTurns() {
        Drive drive = new Drive(25e3, 0.45, 10.5, 12, 14.4, true);
        for (double volts : new double[] {20, 30, 40, 60}) {
            ToroidDesign design = new Proposal(
                            core(200), drive, 12, List.of(new RailLoad(volts, 1)), 40, 105, OptionalDouble.empty())
                    .with(4);
            assertThat(design.ratio()).isGreaterThan(volts / 12).isLessThan(volts / 12 * 1.35);
        }
    }
}
