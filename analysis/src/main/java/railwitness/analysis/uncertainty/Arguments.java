package railwitness.analysis.uncertainty;

/** Refuses bad numbers in one clear line: what it is, its value, what is allowed. */
final class Arguments {
    private Arguments() {}

    static double unlessFinite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " is " + value + ": must be a finite number");
        }
        return value;
    }

    static double unlessNotNegative(String what, double value) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " is " + value + ": must be finite and 0 or more");
        }
        return value;
    }

    static double unlessPositive(String what, double value) {
        if (!(value > 0)) {
            throw new IllegalArgumentException(what + " is " + value + ": must be above 0");
        }
        return value;
    }

    static double unlessFraction(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(what + " is " + value + ": must lie between 0 and 1");
        }
        return value;
    }

    static int unlessAtLeast(String what, int value, int least) {
        if (value < least) {
            throw new IllegalArgumentException(what + " is " + value + ": must be " + least + " or more");
        }
        return value;
    }

    static String blank(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException(what + " is empty: give a name that can be printed");
        }
        return text;
    }
}
