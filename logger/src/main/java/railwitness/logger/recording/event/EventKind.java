package railwitness.logger.recording.event;

import java.util.Arrays;
import java.util.Optional;

/** Sorts of events, by the word that stands in the file and before their sentence. */
public enum EventKind {
    ACKNOWLEDGED("acknowledged"),
    COLD_RESISTANCE("cold resistance"),
    /** What was found at a lead before power. */
    LEADS("leads"),
    OPENING("opening"),
    NO_BENCH("no bench", true),
    NO_POWER("no power", true),
    BEGIN("begin"),
    NO_GUARDIAN("no guardian", true),
    NO_WATCHDOG("no watchdog"),
    LEFT_OUT("left out"),
    WATCHED("watched"),
    /** One step of the supply or a load; its own word says which. */
    POWER_STEP("power"),
    FIRST_POWER("first power", true),
    ASKED("asked"),
    ANSWERED("answered"),
    LOAD_SWITCHED("load switched"),
    LIMITING("limiting", true),
    LIMITING_OVER("limiting over", true),
    REPEATED("repeated"),
    /** A person has the output switched off in the middle of a plan, and on again. */
    PAUSED("paused", true),
    GOES_ON("goes on"),
    NOT_REACHED("not reached"),
    DROP_OUT("drop-out", true),
    STEADY("steady", true),
    DRIFT("drift", true),
    DRIFT_OVER("drift over"),
    /** A person is asked to press a key, and does. */
    KEY("key"),
    CYCLES("cycles"),
    /** The output goes off for a part of a cycle, and the unit is up again after it. */
    RESTING("off period"),
    RESTED("off period over"),
    /** Of a transformer that lies by itself on the bench. */
    INSULATION("insulation"),
    READ("read"),
    ONCE_MORE("once more"),
    NOT_POWERED("not powered", true),
    CONTINUED("continued", true),
    CONTRADICTION("contradiction", true),
    LINE("line", true),
    CLOCK("clock", true),
    DISK("disk", true),
    RECORDER("recorder", true),
    STOP("stop", true),
    TRIP("trip", true),
    ALARM("ALARM", true),
    ALARM_OVER("alarm over", true),
    DISCONNECT_OPEN("disconnect open", true),
    END("end"),
    OFF("off"),
    TRACE("trace"),
    IMPORT("import"),
    COPY("copy");

    private final String word;
    private final boolean outOfTheOrdinary;

    EventKind(String word) {
        this(word, false);
    }

    EventKind(String word, boolean outOfTheOrdinary) {
        this.word = word;
        this.outOfTheOrdinary = outOfTheOrdinary;
    }

    /** As it stands in the file. */
    public String word() {
        return word;
    }

    /** What ended, hindered or endangered a session: a person should hear of it. */
    public boolean isOutOfTheOrdinary() {
        return outOfTheOrdinary;
    }

    /** The kind of that word; empty where it is the word of a step of power, or of nobody's. */
    static Optional<EventKind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
