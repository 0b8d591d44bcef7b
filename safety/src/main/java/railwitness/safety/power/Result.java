package railwitness.safety.power;

/** How a step of power ended. */
public sealed interface Result {
    String words();

    default boolean isDone() {
        return this instanceof Done;
    }

    /** It was done and read back. */
    record Done(String words) implements Result {}

    /** It was not: refused by the instrument, by the interlock or by the order of things, or it read back wrong. */
    record Refused(String words) implements Result {}

    /** Switching off came between. */
    record Stopped(String words) implements Result {}
}
