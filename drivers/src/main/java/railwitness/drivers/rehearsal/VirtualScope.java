package railwitness.drivers.rehearsal;

import java.nio.ByteBuffer;
import java.util.Locale;
import java.util.Random;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.Ripple;
import railwitness.drivers.converter.World;
import railwitness.drivers.line.Block;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.scpi.Numeric;

/**
 * An oscilloscope on one rail: a sweep of equally spaced samples as a definite block of signed integers, the high byte
 * first. At each switching edge a short ringing stands on the ripple, as on every real rail.
 */
public final class VirtualScope extends VirtualInstrument {
    private static final int SAMPLES = 2000;
    private static final double EDGE_SHARE = 0.15;
    private static final double EDGE_DECAY_SECONDS = 0.25e-6;
    private static final double EDGE_HERTZ = 5e6;
    private static final int FULL_SCALE = 32_000;

    private final Channel channel;
    private final Imperfection error;
    private boolean directCoupled;
    private double rangeVolts;
    private double spanSeconds;
    private short[] sweep = new short[0];

    VirtualScope(Fixture fixture, World world, LongSupplier clock, Random random) {
        super(fixture, world, clock, random);
        channel = fixture.reads().isEmpty()
                ? new Channel(world.specimen().rails().get(0).name(), Quantity.RIPPLE)
                : fixture.reads().get(0);
        world.specimen().railIndex(channel.node());
        error = new Imperfection(fixture.stated(channel.quantity()), random);
        settings();
        capture();
        reset();
    }

    private void settings() {
        commands().command("INPut#:COUPling", call -> directCoupled = coupling(call.word(0)));
        commands().query("INPut#:COUPling?", call -> directCoupled ? "DC" : "AC");
        commands().command("[SENSe:]VOLTage[:DC]:RANGe[:UPPer]", call -> rangeVolts = call.number(0, 0.001, 500, 1));
        commands().query("[SENSe:]VOLTage[:DC]:RANGe[:UPPer]?", call -> Numeric.write(rangeVolts));
        commands().command("[SENSe:]SWEep:TIME", call -> spanSeconds = call.number(0, 1e-6, 10, 1e-3));
        commands().query("[SENSe:]SWEep:TIME?", call -> Numeric.write(spanSeconds));
        commands().command("FORMat[:DATA]", call -> {
            if (!call.word(0).toUpperCase(Locale.ROOT).startsWith("INT")) {
                throw RefusedCommand.illegal(call.word(0));
            }
        });
    }

    private void capture() {
        commands().command("INITiate[:IMMediate]", call -> take());
        commands()
                .query(
                        "TRACe:PREamble?",
                        call -> String.join(
                                ",",
                                Integer.toString(sweep.length),
                                Numeric.write(spanSeconds / SAMPLES),
                                Numeric.write(-spanSeconds / 2),
                                Numeric.write(rangeVolts / 2 / FULL_SCALE),
                                "0"));
        commands().block("TRACe[:DATA]?", call -> block());
    }

    private static boolean coupling(String word) {
        return switch (word.toUpperCase(Locale.ROOT)) {
            case "AC" -> false;
            case "DC" -> true;
            default -> throw RefusedCommand.illegal(word);
        };
    }

    private void take() {
        busy(spanSeconds + 0.01);
        Balance.RailState rail = world().at(nowNanos()).rail(channel.node());
        double phase = random().nextDouble();
        sweep = new short[SAMPLES];
        for (int k = 0; k < SAMPLES; k++) {
            double cycles = phase + spanSeconds * k / SAMPLES * rail.ripple().frequencyHz();
            double volts = value(rail, cycles - Math.floor(cycles));
            double code = error.shown(volts, rangeVolts, 0) / (rangeVolts / 2) * FULL_SCALE;
            sweep[k] = (short) Math.max(-32_768, Math.min(32_767, Math.rint(code)));
        }
    }

    /** Ripple at a place of the cycle (0 to 1), with the edges, and the mean where it is let through. */
    private double value(Balance.RailState rail, double cycle) {
        double[] samples = rail.ripple().samples();
        double place = cycle * samples.length;
        int index = (int) place % samples.length;
        double next = samples[(index + 1) % samples.length];
        double smooth = samples[index] + (next - samples[index]) * (place - Math.floor(place));
        return smooth + edges(rail.ripple(), cycle) + (directCoupled ? rail.volts() : 0);
    }

    private double edges(Ripple ripple, double cycle) {
        double size = EDGE_SHARE * ripple.peakToPeakVolts();
        double duty = world().specimen().drive().duty();
        double sum = 0;
        for (double edge : new double[] {0, duty, 0.5, 0.5 + duty}) {
            double since = (cycle - edge + (cycle < edge ? 1 : 0)) / ripple.frequencyHz();
            if (since < 20 * EDGE_DECAY_SECONDS) {
                sum += Math.exp(-since / EDGE_DECAY_SECONDS) * Math.sin(2 * Math.PI * EDGE_HERTZ * since);
            }
        }
        return size * sum;
    }

    private byte[] block() {
        ByteBuffer bytes = ByteBuffer.allocate(2 * sweep.length);
        for (short code : sweep) {
            bytes.putShort(code);
        }
        return Block.of(bytes.array());
    }

    @Override
    void reset() {
        directCoupled = false;
        rangeVolts = 1;
        spanSeconds = 1e-3;
        sweep = new short[0];
    }
}
