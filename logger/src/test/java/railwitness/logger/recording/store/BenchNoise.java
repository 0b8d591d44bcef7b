package railwitness.logger.recording.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;

/**
 * What eight instruments of a bench say, 50 times a second each, with the digits, the noise and the uneven times that
 * real ones have; made from a seed.
 */
final class BenchNoise {
    static final int PER_SECOND = 50;
    private static final int ROUND = 49_999;

    private final List<Source> sources = new ArrayList<>();
    private long round;
    private int next;

    BenchNoise(long seed) {
        Random random = new Random(seed);
        sources.add(new Source("input.voltage", 12.6, 4e-4, 1e-5, 1, random));
        sources.add(new Source("input.current", 0.0821, 1.5e-5, 1e-7, 0.009873, random));
        sources.add(new Source("plus.voltage", 35.2, 2.5e-3, 1e-4, 1, random));
        sources.add(new Source("minus.voltage", -35.4, 2.5e-3, 1e-4, 1, random));
        sources.add(new Source("plus.current", 0.02512, 6e-6, 1e-7, 0.010021, random));
        sources.add(new Source("minus.current", 2.508, 1e-3, 1e-4, 1, random));
        sources.add(new Source("plus.ripple", 0.0843, 4e-4, 1e-5, 1, random));
        sources.add(new Source("heatsink.temperature", 51.2, 0.04, 0.01, 1, random));
    }

    /** The next reading: every channel in turn. */
    Reading next() {
        Reading reading = sources.get(next).at(round);
        if (++next == sources.size()) {
            next = 0;
            round++;
        }
        return reading;
    }

    List<Channel> channels() {
        return sources.stream().map(s -> s.channel).toList();
    }

    /** Tells of the same readings again. */
    void rewind() {
        round = 0;
        next = 0;
    }

    private static final class Source {
        private final Channel channel;
        private final double[] values = new double[ROUND];
        private final int[] late = new int[ROUND];
        private final int[] took = new int[ROUND];

        Source(String name, double level, double noise, double digit, double shunt, Random random) {
            channel = Channel.of(name);
            double digits = Math.rint(1 / digit);
            for (int i = 0; i < ROUND; i++) {
                double drift = level * 0.01 * Math.sin(2 * Math.PI * i / ROUND);
                double shown = Math.rint((level + drift + noise * random.nextGaussian()) * digits) / digits;
                values[i] = shunt == 1 ? shown : shown / shunt;
                late[i] = (int) Math.abs(80_000 * random.nextGaussian());
                took[i] = 3_100_000 + (int) Math.abs(200_000 * random.nextGaussian());
            }
        }

        Reading at(long round) {
            int i = (int) (round % ROUND);
            long requested = round * (1_000_000_000L / PER_SECOND) + late[i];
            return new Measured(channel, values[i], requested, requested + took[i]);
        }
    }
}
