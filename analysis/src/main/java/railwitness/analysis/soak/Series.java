package railwitness.analysis.soak;

/**
 * A time series up to one of its readings.
 *
 * @param seconds time of each reading, not falling
 * @param values as many
 * @param end index of the reading taken as the last
 */
record Series(double[] seconds, double[] values, int end) {
    Series {
        if (values.length == 0 || seconds.length != values.length) {
            throw new IllegalArgumentException(
                    seconds.length + " times for " + values.length + " values: must be as many, at least one");
        }
    }

    double span() {
        return seconds[end] - seconds[0];
    }

    /** Index of the first reading no older than so many seconds before the end. */
    int firstAfter(double secondsBack) {
        double from = seconds[end] - secondsBack;
        int low = 0;
        int high = end;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (seconds[middle] < from) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Value so many seconds before the end, between readings by a straight line. */
    double valueBefore(double secondsBack) {
        double at = seconds[end] - secondsBack;
        int after = firstAfter(secondsBack);
        if (after == 0 || seconds[after] == at) {
            return values[after];
        }
        double part = (at - seconds[after - 1]) / (seconds[after] - seconds[after - 1]);
        return values[after - 1] + part * (values[after] - values[after - 1]);
    }
}
