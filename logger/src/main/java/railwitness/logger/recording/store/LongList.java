package railwitness.logger.recording.store;

import java.util.Arrays;

/** A growing row of whole numbers. */
final class LongList {
    private long[] numbers = new long[64];
    private int size;

    void add(long number) {
        if (size == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * size);
        }
        numbers[size++] = number;
    }

    long[] toArray() {
        return Arrays.copyOf(numbers, size);
    }
}
