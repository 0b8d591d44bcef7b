package railwitness.logger.rehearsal;

import java.util.List;
import railwitness.analysis.design.Design;
import railwitness.drivers.rehearsal.Specimen;

/**
 * The usual unit, made to fit a design sheet of which little is known: turns that give its rails from its input, and
 * resistances, capacitors and drains in proportion to its voltages and its power. What the sheet does give replaces it
 * part by part. Of a unit like the usual one (13.8 V, two rails of 36.7 V at 4 A) nothing is changed.
 */
final class FittingUnit {
    private static final double USUAL_INPUT_VOLTS = 13.8;
    private static final double USUAL_RAIL_VOLTS = 36.7;
    private static final double USUAL_RAIL_AMPS = 4;
    private static final double USUAL_RAILS = 2;
    private static final double USUAL_WATTS = USUAL_RAILS * USUAL_RAIL_VOLTS * USUAL_RAIL_AMPS;

    /** No-load rail over rail at full load of the usual unit; a regulated one keeps more in hand (common practice). */
    private static final double SAG = 1.11;

    private static final double HEADROOM = 1.3;

    private final Design design;
    private final Specimen usual = Specimen.usual();
    private final double inputVolts;
    private final double railVolts;
    private final double watts;

    private FittingUnit(Design design) {
        this.design = design;
        this.inputVolts = design.input().nominalVolts();
        this.railVolts = design.rails().stream()
                .mapToDouble(rail -> Math.abs(rail.nominalVolts()))
                .max()
                .orElseThrow();
        double stated = design.rails().stream()
                .mapToDouble(rail ->
                        Math.abs(rail.nominalVolts()) * rail.fullLoadAmperes().orElse(0))
                .sum();
        this.watts = stated > 0 ? stated : USUAL_WATTS;
    }

    static Specimen of(Design design) {
        FittingUnit unit = new FittingUnit(design);
        return unit.usual
                .withDrive(unit.drive())
                .withInput(unit.input())
                .withTransformer(unit.transformer())
                .withSides(unit.side(unit.usual.side1()), unit.side(unit.usual.side2()))
                .withRectifier(unit.rectifier())
                .withRails(unit.usual.filter(), List.of(unit.rail()));
    }

    /** Resistances at the input go with volts squared per watt. */
    private double inputScale() {
        double volts = inputVolts / USUAL_INPUT_VOLTS;
        return volts * volts / (watts / USUAL_WATTS);
    }

    /** Resistances at a rail likewise, with that rail's share of the power. */
    private double railScale() {
        double volts = railVolts / USUAL_RAIL_VOLTS;
        double power = watts / design.rails().size() / (USUAL_WATTS / USUAL_RAILS);
        return volts * volts / power;
    }

    private Specimen.Drive drive() {
        Specimen.Drive known = usual.drive();
        double volts = inputVolts / USUAL_INPUT_VOLTS;
        return new Specimen.Drive(
                known.frequencyHz(),
                known.duty(),
                known.startVolts() * volts,
                known.dropOutVolts() * volts,
                known.softStartSeconds(),
                known.controlAmps() * (watts / USUAL_WATTS / volts),
                known.gateWatts(),
                known.standbyAmps(),
                known.regulatedVolts());
    }

    private Specimen.Input input() {
        Specimen.Input known = usual.input();
        return new Specimen.Input(
                known.leadOhm(), known.capacitorFarad() / inputScale(), known.capacitorEsrOhm() * inputScale());
    }

    private Specimen.Transformer transformer() {
        Specimen.Transformer t = usual.transformer();
        double kept = design.converter().regulated() ? HEADROOM : SAG;
        double fits = railVolts * kept / inputVolts / (USUAL_RAIL_VOLTS * SAG / USUAL_INPUT_VOLTS);
        double primary = inputScale();
        double secondary = railScale();
        return new Specimen.Transformer(
                t.primaryTurns(),
                t.secondaryTurns1() * fits,
                t.secondaryTurns2() * fits,
                t.primaryOhm() * primary,
                t.secondaryOhm1() * secondary,
                t.secondaryOhm2() * secondary,
                t.primaryLeakageHenry() * primary,
                t.secondaryLeakageHenry() * secondary,
                t.magnetisingHenry() * primary,
                t.saturationVoltSeconds() * inputVolts / USUAL_INPUT_VOLTS,
                t.coreOhm() * primary,
                t.shortedTurnOhm(),
                t.peakCharging(),
                t.ringAmps(),
                t.copperPerKelvin());
    }

    private Specimen.Switch side(Specimen.Switch known) {
        return new Specimen.Switch(known.onOhm() * inputScale(), known.perKelvin(), known.offOhm(), known.driven());
    }

    private Specimen.Rectifier rectifier() {
        Specimen.Rectifier known = usual.rectifier();
        return new Specimen.Rectifier(
                known.dropVolts(), known.slopeOhm() * railScale(), known.logVolts(), known.dropPerKelvin());
    }

    private Specimen.Rail rail() {
        Specimen.Rail known = usual.rails().get(0);
        return new Specimen.Rail(
                known.name(),
                known.negative(),
                known.chokeHenry() * railScale(),
                known.chokeOhm() * railScale(),
                known.capacitorFarad() / railScale(),
                known.capacitorEsrOhm() * railScale(),
                known.bleederOhm() * railScale(),
                known.diodeExtraOhm1(),
                known.diodeExtraOhm2(),
                known.diodeShortOhm());
    }
}
