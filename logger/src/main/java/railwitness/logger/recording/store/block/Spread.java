package railwitness.logger.recording.store.block;

/**
 * How far bytes are from being all alike.
 *
 * @param bitsPerByte entropy of the single bytes, 0 to 8 bits (Shannon, 1948)
 * @param repeats how many bytes are the same as the one before
 */
record Spread(double bitsPerByte, int repeats) {
    static Spread of(byte[] bytes, int count) {
        int[] histogram = new int[256];
        int repeats = 0;
        for (int i = 0; i < count; i++) {
            histogram[bytes[i] & 0xff]++;
            repeats += i > 0 && bytes[i] == bytes[i - 1] ? 1 : 0;
        }
        double bits = 0;
        for (int h : histogram) {
            if (h > 0) {
                bits -= h * Math.log((double) h / count);
            }
        }
        return new Spread(count == 0 ? 0 : bits / count / Math.log(2), repeats);
    }
}
