package railwitness.logger.recording.store;

/** How a step of the plan ended. */
public enum StepOutcome {
    MEASURED("measured"),
    NOT_REACHED("not reached"),
    STOPPED("stopped");

    private final String words;

    StepOutcome(String words) {
        this.words = words;
    }

    /** As written in the file: measured, not reached, stopped. */
    public String words() {
        return words;
    }

    static StepOutcome of(String words) {
        for (StepOutcome outcome : values()) {
            if (outcome.words.equals(words)) {
                return outcome;
            }
        }
        throw new IllegalArgumentException("step outcome '" + words + "' must be measured, not reached or stopped");
    }
}
