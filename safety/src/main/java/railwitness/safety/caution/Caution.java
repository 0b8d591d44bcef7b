package railwitness.safety.caution;

/**
 * One caution for one unit.
 *
 * @param here what the numbers of this unit and plan say; may be empty
 */
public record Caution(SignalWord word, Topic topic, String here) {
    /** The whole caution on one line: signal word, title, what holds here, what to do. */
    public String sentence() {
        return word + ": " + topic.title() + ". " + (here.isEmpty() ? "" : here + " ") + topic.text();
    }
}
