package railwitness.drivers.rehearsal;

/** A message the instrument does not carry out, with the entry it puts into its error queue. */
final class RefusedCommand extends RuntimeException {
    private final int number;
    private final String detail;

    RefusedCommand(int number, String text, String detail) {
        super(text);
        this.number = number;
        this.detail = detail;
    }

    static RefusedCommand undefined(String header) {
        return new RefusedCommand(-113, "Undefined header", header);
    }

    static RefusedCommand missing() {
        return new RefusedCommand(-109, "Missing parameter", "");
    }

    static RefusedCommand type(String parameter) {
        return new RefusedCommand(-104, "Data type error", parameter);
    }

    static RefusedCommand range(String parameter) {
        return new RefusedCommand(-222, "Data out of range", parameter);
    }

    static RefusedCommand illegal(String parameter) {
        return new RefusedCommand(-224, "Illegal parameter value", parameter);
    }

    static RefusedCommand conflict(String why) {
        return new RefusedCommand(-221, "Settings conflict", why);
    }

    int number() {
        return number;
    }

    String detail() {
        return detail;
    }
}
