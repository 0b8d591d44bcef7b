package railwitness.logger.recording.rehearsal;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import railwitness.analysis.transformer.WoundAsMeant;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.winding.Coil;
import railwitness.drivers.winding.Half;
import railwitness.logger.recording.plan.TransformerTest;

/** The transformer of a rehearsal, alone on the virtual bench, as its design sheet has it. */
public final class CoilMaker {
    private static final double GENERATOR_VOLTS = 5;
    private static final double GENERATOR_OHMS = 50;
    private static final double HERTZ = 25_000;
    private static final double RING_MICROFARADS = 1;
    private static final double LEAST_LEAKAGE = 0.08e-6;

    private CoilMaker() {}

    /**
     * A sound one.
     *
     * @throws IllegalArgumentException where the sheet does not give turns and the core's size
     */
    public static Coil of(WoundDesign sheet) {
        WoundAsMeant meant = meant(sheet);
        double nominal = sheet.design().input().nominalVolts();
        double ratio = (double) meant.secondaryTurns() / meant.primaryTurns();
        double leakage =
                sheet.design().transformer().orElseThrow().leakageNanohenries().orElse(0) * 1e-9;
        return Coil.sound(
                meant.primaryTurns(),
                meant.secondaryTurns(),
                meant.primaryOhms(),
                meant.secondaryOhms(),
                meant.henries(),
                nominal * nominal / meant.coreWatts(),
                Math.max(LEAST_LEAKAGE, leakage / (ratio * ratio)));
    }

    /** One of many sound ones: cores and hand winding spread (common practice, no source). */
    public static Coil sister(Coil sound, long number) {
        Random random = new Random(6151 * number + 29);
        Map<Half, Double> ohms = new EnumMap<>(Half.class);
        double primary = spread(random, 0.08);
        double secondary = spread(random, 0.08);
        for (Half half : Half.values()) {
            boolean first = half == Half.PRIMARY_A || half == Half.PRIMARY_B;
            ohms.put(half, sound.ohms20().get(half) * (first ? primary : secondary) * spread(random, 0.015));
        }
        return new Coil(
                sound.turns(),
                ohms,
                false,
                false,
                sound.henriesPerTurn() * spread(random, 0.2),
                sound.coreOhmPerTurn() * spread(random, 0.25),
                sound.primaryLeakHenry() * spread(random, 0.2),
                sound.secondaryLeakHenry() * spread(random, 0.2),
                sound.closedTurnOhm());
    }

    private static double spread(Random random, double share) {
        return 1 + share * (2 * random.nextDouble() - 1);
    }

    /** The generator of the plan. */
    public static Coil.Drive drive(WoundDesign sheet, TransformerTest test) {
        return new Coil.Drive(
                GENERATOR_VOLTS,
                test.driveHz().orElse(sheet.design().converter().frequencyHz().orElse(HERTZ)),
                test.senseOhms().orElse(GENERATOR_OHMS));
    }

    /** The capacitor of the plan, F. */
    public static double ringFarads(TransformerTest test) {
        return test.ringMicrofarads().orElse(RING_MICROFARADS) * 1e-6;
    }

    /** The unit with this transformer in it, as far as the unit's own kind of description goes. */
    public static Specimen fitted(Specimen unit, Coil coil) {
        Specimen.Transformer known = unit.transformer();
        double turns = coil.turns().get(Half.PRIMARY_A);
        Specimen.Transformer wound = new Specimen.Transformer(
                turns,
                coil.turns().get(Half.SECONDARY_A),
                coil.turns().get(Half.SECONDARY_B),
                coil.ohms20().get(Half.PRIMARY_A),
                coil.ohms20().get(Half.SECONDARY_A),
                coil.ohms20().get(Half.SECONDARY_B),
                known.primaryLeakageHenry(),
                known.secondaryLeakageHenry(),
                coil.henriesPerTurn() * turns * turns,
                known.saturationVoltSeconds() * turns / known.primaryTurns(),
                coil.coreOhmPerTurn() * turns * turns,
                Double.isFinite(coil.closedTurnOhm()) ? coil.closedTurnOhm() : known.shortedTurnOhm(),
                known.peakCharging(),
                known.ringAmps(),
                known.copperPerKelvin());
        return unit.withTransformer(wound);
    }

    private static WoundAsMeant meant(WoundDesign sheet) {
        return WoundAsMeant.of(sheet)
                .filter(meant -> Double.isFinite(meant.primaryOhms()) && meant.kneeVolts() > 0)
                .orElseThrow(() -> new IllegalArgumentException(
                        "a rehearsal of a transformer plan needs [transformer] turns and the core's size: [core] outer_mm,"
                                + " inner_mm and height_mm of the design sheet"));
    }
}
