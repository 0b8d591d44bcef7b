package railwitness.drivers.line;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks by which a reply is known to belong to its question. The question is followed, in the same message, by one to
 * three questions for the event enable register ({@code ;*ESE?}), in turn; by IEEE 488.2 the reply then ends with so many
 * times the number that register was set to when the line was last brought in step. What bears another number, or the
 * number another time too often or too seldom, answers something else.
 */
final class Tags {
    private static final int TURNS = 3;
    private static final String QUESTION = ";*ESE?";
    private static final Pattern LAST = Pattern.compile("\\s*;\\s*\\+?0*(\\d{1,3})\\s*$");

    private final int number;
    private int turn;

    /** @param number what the register was set to */
    Tags(int number) {
        this.number = number;
    }

    /** Whether this message can bear a mark: one question, none of the common ones, whose replies may have to be last. */
    static boolean fits(String message) {
        return message.contains("?") && !message.startsWith("*") && message.indexOf(';') < 0;
    }

    /** The message with the next mark. */
    String marked(String message) {
        turn = turn % TURNS + 1;
        return message + QUESTION.repeat(turn);
    }

    /** The reply without the mark of the last message; empty when it bears none or another. */
    Optional<String> own(String line) {
        String rest = ";" + line;
        for (int i = 0; i < turn; i++) {
            if (!endsWithNumber(rest)) {
                return Optional.empty();
            }
            rest = shortened(rest);
        }
        boolean tooMany = endsWithNumber(rest) && !shortened(rest).isEmpty();
        return tooMany ? Optional.empty() : Optional.of(rest.isEmpty() ? "" : rest.substring(1));
    }

    /** True when a line bears no mark at all, right or wrong. */
    static boolean unmarked(String line) {
        return !LAST.matcher(";" + line).find();
    }

    private boolean endsWithNumber(String text) {
        Matcher matcher = LAST.matcher(text);
        return matcher.find() && Integer.parseInt(matcher.group(1)) == number;
    }

    private static String shortened(String text) {
        Matcher matcher = LAST.matcher(text);
        return matcher.find() ? text.substring(0, matcher.start()) : text;
    }
}
