package railwitness.logger.recording.rehearsal;

import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Rail;
import railwitness.drivers.converter.Specimen;

/**
 * The usual kind of supply in the size of a design sheet: its impedances go with the sheet's rails and full loads, its
 * turns with its rails, its start with its input (rules of similarity; that units are built so is common practice, no
 * source).
 */
final class UsualUnit {
    private static final double USUAL_INPUT_VOLTS = 13.8;
    private static final double USUAL_RAIL_VOLTS = 36.7;
    private static final double USUAL_RAIL_AMPS = 4;

    /** What turns give without load over what is called nominal. */
    private static final double UNLOADED = 1.13;

    private static final double FURTHEST = 30;

    private UsualUnit() {}

    static Specimen of(Design design) {
        Specimen usual = Specimen.usual();
        double volts = highestNominal(design);
        double amps = fullLoad(design).orElse(USUAL_RAIL_VOLTS * USUAL_RAIL_AMPS / volts);
        double input = design.input().nominalVolts();
        double power = volts * amps / (USUAL_RAIL_VOLTS * USUAL_RAIL_AMPS);
        double railOhms = near(volts / amps / (USUAL_RAIL_VOLTS / USUAL_RAIL_AMPS));
        double inputOhms = near(input * input / (USUAL_INPUT_VOLTS * USUAL_INPUT_VOLTS) / power);
        double slower = usual.drive().frequencyHz()
                / design.converter().frequencyHz().orElse(usual.drive().frequencyHz());
        return usual.withDrive(drive(design, usual.drive(), near(power)))
                .withInput(new Specimen.Input(
                        usual.input().leadOhm(),
                        usual.input().capacitorFarad() / inputOhms,
                        usual.input().capacitorEsrOhm() * inputOhms))
                .withTransformer(transformer(design, usual.transformer(), railOhms, inputOhms, slower))
                .withSides(side(usual.side1(), inputOhms), side(usual.side2(), inputOhms))
                .withRectifier(new Specimen.Rectifier(
                        usual.rectifier().dropVolts(),
                        usual.rectifier().slopeOhm() * railOhms,
                        usual.rectifier().logVolts(),
                        usual.rectifier().dropPerKelvin()))
                .withRails(
                        usual.filter(),
                        usual.rails().stream()
                                .map(rail -> rail(rail, volts, railOhms, slower))
                                .toList());
    }

    /** The highest nominal magnitude of any rail, V. */
    static double highestNominal(Design design) {
        return design.rails().stream().mapToDouble(Rail::nominalMagnitude).max().orElseThrow();
    }

    private static OptionalDouble fullLoad(Design design) {
        return design.rails().stream()
                .filter(rail -> rail.fullLoadAmperes().isPresent())
                .mapToDouble(rail -> rail.fullLoadAmperes().getAsDouble())
                .max();
    }

    private static double near(double factor) {
        return Math.max(1 / FURTHEST, Math.min(FURTHEST, factor));
    }

    private static Specimen.Drive drive(Design design, Specimen.Drive drive, double power) {
        double nominal = design.input().nominalVolts();
        double start = Math.min(
                drive.startVolts() * (nominal / USUAL_INPUT_VOLTS),
                design.input().lowestVolts().orElse(nominal));
        return new Specimen.Drive(
                drive.frequencyHz(),
                drive.duty(),
                start,
                drive.dropOutVolts() * (start / drive.startVolts()),
                drive.softStartSeconds(),
                drive.controlAmps() * power,
                drive.gateWatts() * power,
                drive.standbyAmps(),
                drive.regulatedVolts());
    }

    private static Specimen.Transformer transformer(
            Design design, Specimen.Transformer core, double railOhms, double inputOhms, double slower) {
        boolean choke = design.converter().filter() == FilterInput.CHOKE;
        double share = choke
                ? 2 * design.converter().duty().orElse(Specimen.usual().drive().duty())
                : 1;
        double room = design.converter().regulated() || choke ? UNLOADED + 0.1 : UNLOADED;
        double turns = core.primaryTurns()
                * room
                * highestNominal(design)
                / share
                / design.input().nominalVolts();
        return new Specimen.Transformer(
                core.primaryTurns(),
                turns,
                turns,
                core.primaryOhm() * inputOhms,
                core.secondaryOhm1() * railOhms,
                core.secondaryOhm2() * railOhms,
                core.primaryLeakageHenry() * inputOhms * slower,
                core.secondaryLeakageHenry() * railOhms * slower,
                core.magnetisingHenry() * slower,
                core.saturationVoltSeconds() * slower * design.input().nominalVolts() / USUAL_INPUT_VOLTS,
                core.coreOhm() * inputOhms,
                core.shortedTurnOhm(),
                core.peakCharging(),
                core.ringAmps(),
                core.copperPerKelvin());
    }

    private static Specimen.Switch side(Specimen.Switch side, double inputOhms) {
        return new Specimen.Switch(side.onOhm() * inputOhms, side.perKelvin(), side.offOhm(), side.driven());
    }

    private static Specimen.Rail rail(Specimen.Rail rail, double volts, double railOhms, double slower) {
        double bleeder = rail.bleederOhm() * volts * volts / (USUAL_RAIL_VOLTS * USUAL_RAIL_VOLTS);
        return new Specimen.Rail(
                rail.name(),
                rail.negative(),
                rail.chokeHenry() * railOhms * slower,
                rail.chokeOhm(),
                rail.capacitorFarad() / railOhms,
                rail.capacitorEsrOhm() * railOhms,
                Math.max(1, bleeder),
                rail.diodeExtraOhm1(),
                rail.diodeExtraOhm2(),
                rail.diodeShortOhm());
    }
}
