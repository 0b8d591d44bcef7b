package railwitness.drivers.scpi;

import java.util.EnumSet;
import java.util.Set;

/** The bits of the standard event status register (IEEE 488.2), asked for by {@code *ESR?}. */
public enum StandardEvent {
    OPERATION_COMPLETE,
    REQUEST_CONTROL,
    QUERY_ERROR,
    DEVICE_ERROR,
    EXECUTION_ERROR,
    COMMAND_ERROR,
    USER_REQUEST,
    POWER_ON;

    /** Bit n weighs 2 to the power of n. */
    public int weight() {
        return 1 << ordinal();
    }

    /** The events set in a register, 0 to 255. */
    public static Set<StandardEvent> in(int register) {
        if (register < 0 || register > 255) {
            throw new IllegalArgumentException("register " + register + " must be 0 to 255");
        }
        EnumSet<StandardEvent> events = EnumSet.noneOf(StandardEvent.class);
        for (StandardEvent event : values()) {
            if ((register & event.weight()) != 0) {
                events.add(event);
            }
        }
        return events;
    }
}
