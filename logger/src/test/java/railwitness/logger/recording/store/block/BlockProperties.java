package railwitness.logger.recording.store.block;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;

import java.util.Arrays;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

class BlockProperties {
    private static final long SEED = 20261125;

    @Test
    void everyBlockComesBackBitForBit() {
        Random random = new Random(SEED);
        try (BlockCodec codec = new BlockCodec()) {
            for (int round = 0; round < 400; round++) {
                ReadingColumns given = any(random);
                ReadingColumns back = new ReadingColumns(1);
                codec.unpack(codec.pack(given), back);
                assertSame(given, back, "seed " + SEED + " round " + round);
            }
        }
    }

    @Test
    void shuntCurrentsPackAsTightlyAsTheMetersDigits() {
        Random random = new Random(SEED);
        ReadingColumns shunt = new ReadingColumns(3000);
        ReadingColumns meter = new ReadingColumns(3000);
        for (int i = 0; i < 3000; i++) {
            double volts = Math.rint((0.0421 + random.nextGaussian() * 2e-5) * 1e7) / 1e7;
            meter.add(i, i * 20_000_000L, i * 20_000_000L + 5, 1, Double.doubleToRawLongBits(volts));
            shunt.add(i, i * 20_000_000L, i * 20_000_000L + 5, 1, Double.doubleToRawLongBits(volts / 0.009873));
        }
        try (BlockCodec codec = new BlockCodec()) {
            int plain = codec.pack(meter).length;
            int divided = codec.pack(shunt).length;
            assertThat(divided - plain)
                    .as("%s against %s bytes", divided, plain)
                    .isLessThan(3000);
        }
    }

    @Test
    void anyFlippedBitOfABlockIsRefused() {
        Random random = new Random(SEED);
        try (BlockCodec codec = new BlockCodec()) {
            byte[] packed = codec.pack(any(new Random(3)));
            for (int round = 0; round < 500; round++) {
                byte[] damaged = packed.clone();
                damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
                assertRefused(codec, damaged);
            }
            assertRefused(codec, Arrays.copyOf(packed, packed.length - 3));
            assertRefused(codec, new byte[2]);
        }
    }

    private static void assertRefused(BlockCodec codec, byte[] packed) {
        assertThatThrownBy(() -> codec.unpack(packed, new ReadingColumns(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("packed");
    }

    private static ReadingColumns any(Random random) {
        int n = 1 + random.nextInt(random.nextBoolean() ? 5 : BlockCodec.MOST_READINGS);
        Supplier<Double> numbers = numbers(random);
        ReadingColumns readings = new ReadingColumns(1);
        boolean wild = random.nextInt(4) == 0;
        long seq = random.nextInt(1000);
        long at = wild ? random.nextLong() : random.nextInt(1 << 30);
        for (int i = 0; i < n; i++) {
            seq += 1 + random.nextInt(8);
            at = wild ? random.nextLong() : at + 20_000_000 + random.nextInt(100_000);
            int kind = random.nextInt(50) > 0 ? 1 : 1 + random.nextInt(3);
            long payload = kind == 1 ? Double.doubleToRawLongBits(numbers.get()) : kind == 3 ? random.nextInt(40) : 0;
            readings.add(seq, at, at + random.nextInt(3_000_000), kind, payload);
        }
        return readings;
    }

    private static Supplier<Double> numbers(Random random) {
        return switch (random.nextInt(6)) {
            case 0 -> () -> Math.rint(random.nextGaussian() * 1000) / 1000;
            case 1 -> () -> Math.rint(35e4 + random.nextGaussian() * 100) / 1e4 / 0.009873;
            case 2 -> random::nextGaussian;
            case 3 -> () -> 12.0;
            case 4 -> () -> random.nextInt(10) == 0 ? -0.0 : Math.rint(random.nextGaussian() * 5);
            default -> () -> finite(random);
        };
    }

    private static double finite(Random random) {
        double value = Double.longBitsToDouble(random.nextLong());
        return Double.isFinite(value) ? value : Double.MIN_VALUE;
    }

    private static void assertSame(ReadingColumns given, ReadingColumns back, String where) {
        assertThat(back.size()).as(where).isEqualTo(given.size());
        for (int i = 0; i < given.size(); i++) {
            boolean same = back.seq(i) == given.seq(i)
                    && back.requestedNanos(i) == given.requestedNanos(i)
                    && back.repliedNanos(i) == given.repliedNanos(i)
                    && back.kind(i) == given.kind(i)
                    && back.payload(i) == given.payload(i);
            if (!same) {
                fail(where + " reading " + i);
            }
        }
    }
}
