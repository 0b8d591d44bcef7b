package railwitness.logger.campaign;

import java.util.Optional;

/** When in a session the trouble begins. */
enum Moment {
    /** While the bench is opened; counted in exchanges of the instrument. */
    OPENING(""),
    LISTENING("begin"),
    ARMING("output off"),
    FIRST_STEPS("output on"),
    STANDBY("step standby"),
    TURNING_ON("remote turn-on: remote turn-on on"),
    NO_LOAD("step no-load"),
    LOADED("step load-sweep"),
    AVERAGING("averaging load-sweep"),
    LINE("step line-sweep"),
    /** Before the first byte of off. */
    END("end"),
    /** After the first bytes of off. */
    OFF_SENT("off sent"),
    DISCHARGING("off read back");

    private final String words;

    Moment(String words) {
        this.words = words;
    }

    /** Whether this is when it is. */
    boolean isNow(String what, String text) {
        return !words.isEmpty() && (words.equals(what) || words.equals(what + ": " + text));
    }

    /** From the end on there is no time to lose: the trouble begins at once. */
    boolean atOnce() {
        return compareTo(END) >= 0;
    }

    static Optional<Moment> of(String what, String text) {
        for (Moment moment : values()) {
            if (moment.isNow(what, text)) {
                return Optional.of(moment);
            }
        }
        return Optional.empty();
    }
}
