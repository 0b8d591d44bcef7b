package railwitness.safety.caution;

/** Signal words after ANSI Z535, gravest first. */
public enum SignalWord {
    DANGER("will result in death or serious injury when it is not avoided"),
    WARNING("could result in death or serious injury when it is not avoided"),
    CAUTION("could result in minor or moderate injury when it is not avoided"),
    NOTICE("does not concern injury, but matters");

    private final String meaning;

    SignalWord(String meaning) {
        this.meaning = meaning;
    }

    public String meaning() {
        return meaning;
    }
}
