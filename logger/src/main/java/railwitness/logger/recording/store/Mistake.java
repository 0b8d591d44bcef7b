package railwitness.logger.recording.store;

/** Why the program broke off, in words that may stand in a session: no names of classes. */
public final class Mistake {
    private Mistake() {}

    /** One line, without a full stop. */
    public static String words(Throwable mistake) {
        if (mistake instanceof OutOfMemoryError) {
            return "its memory is used up";
        }
        if (mistake instanceof StackOverflowError) {
            return "something is nested too deeply";
        }
        String text = mistake.getMessage();
        return text == null || text.isBlank() || mistake instanceof NullPointerException
                ? "no reason was given"
                : text.strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
