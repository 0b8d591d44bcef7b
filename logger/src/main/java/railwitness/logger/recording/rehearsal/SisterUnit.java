package railwitness.logger.recording.rehearsal;

import java.util.Random;
import railwitness.drivers.converter.Specimen;

/**
 * One of many units of a design: its parts lie around those of the design sheet as bought and wound parts do (standard
 * deviations of 0.5 % for a diode's drop to 8 % for a capacitor's series resistance; common practice, no source).
 */
public final class SisterUnit {
    private static final double FURTHEST = 2.5;

    private final Random random;

    private SisterUnit(long number) {
        this.random = new Random(7919 * number + 17);
    }

    /** @param number which one; the same number gives the same unit */
    public static Specimen of(Specimen sound, long number) {
        SisterUnit unit = new SisterUnit(number);
        Specimen changed = sound.withTransformer(unit.transformer(sound.transformer()))
                .withSides(unit.side(sound.side1()), unit.side(sound.side2()))
                .withRectifier(unit.rectifier(sound.rectifier()));
        return changed.withRails(
                changed.filter(), changed.rails().stream().map(unit::rail).toList());
    }

    private double around(double value, double share) {
        double off = Math.max(-FURTHEST, Math.min(FURTHEST, random.nextGaussian()));
        return value * (1 + share * off);
    }

    private Specimen.Transformer transformer(Specimen.Transformer t) {
        return new Specimen.Transformer(
                t.primaryTurns(),
                t.secondaryTurns1(),
                t.secondaryTurns2(),
                around(t.primaryOhm(), 0.015),
                around(t.secondaryOhm1(), 0.015),
                around(t.secondaryOhm2(), 0.015),
                around(t.primaryLeakageHenry(), 0.02),
                around(t.secondaryLeakageHenry(), 0.02),
                around(t.magnetisingHenry(), 0.05),
                t.saturationVoltSeconds(),
                around(t.coreOhm(), 0.03),
                t.shortedTurnOhm(),
                t.peakCharging(),
                around(t.ringAmps(), 0.03),
                t.copperPerKelvin());
    }

    private Specimen.Switch side(Specimen.Switch s) {
        return new Specimen.Switch(around(s.onOhm(), 0.03), s.perKelvin(), s.offOhm(), s.driven());
    }

    private Specimen.Rectifier rectifier(Specimen.Rectifier r) {
        return new Specimen.Rectifier(
                around(r.dropVolts(), 0.005), around(r.slopeOhm(), 0.03), r.logVolts(), r.dropPerKelvin());
    }

    private Specimen.Rail rail(Specimen.Rail r) {
        return r.withCapacitor(around(r.capacitorFarad(), 0.04), around(r.capacitorEsrOhm(), 0.08));
    }
}
