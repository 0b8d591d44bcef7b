package railwitness.drivers.rehearsal;

/** A message the instrument does not carry out, with the entry it puts into its error queue. */
final class Refusal extends RuntimeException {
    private final int number;
    private final String detail;

    Refusal(int number, String text, String detail) {
        super(text);
        this.number = number;
        this.detail = detail;
    }

    static Refusal undefined(String header) {
        return new Refusal(-113, "Undefined header", header);
    }

    static Refusal missing() {
        return new Refusal(-109, "Missing parameter", "");
    }

    static Refusal type(String parameter) {
        return new Refusal(-104, "Data type error", parameter);
    }

    static Refusal range(String parameter) {
        return new Refusal(-222, "Data out of range", parameter);
    }

    static Refusal illegal(String parameter) {
        return new Refusal(-224, "Illegal parameter value", parameter);
    }

    static Refusal conflict(String why) {
        return new Refusal(-221, "Settings conflict", why);
    }

    int number() {
        return number;
    }

    String detail() {
        return detail;
    }
}
