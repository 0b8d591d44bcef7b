package railwitness.drivers.instrument;

import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * Where in its reply a meter writes the reading, and how.
 *
 * @param part of several numbers apart by commas, semicolons or spaces the one that counts, from 1; empty for a reply that is
 *     one number
 * @param decimalComma whether a comma stands where the standard has a point; numbers are then apart by semicolons or spaces
 */
public record ReplyForm(OptionalInt part, boolean decimalComma) {
    private static final Pattern SEMICOLONS = Pattern.compile(";");
    private static final Pattern COMMAS = Pattern.compile("[,;]");
    private static final Pattern SPACES = Pattern.compile("\\s+");

    /** As the standard has it. */
    public static ReplyForm standard() {
        return new ReplyForm(OptionalInt.empty(), false);
    }

    /**
     * The reading as the standard would write it.
     *
     * @throws IllegalArgumentException when the reply has not so many parts, or both a point and a comma
     */
    public String number(String reply) {
        String own = part.isPresent() ? part(reply.strip(), part.getAsInt()) : reply;
        if (!decimalComma) {
            return own;
        }
        if (own.contains(".")) {
            throw new IllegalArgumentException(
                    "'" + own + "' has a point, but the dialect says that decimals stand behind a comma");
        }
        return own.replace(',', '.');
    }

    private String part(String reply, int wanted) {
        String[] parts = (decimalComma ? SEMICOLONS : COMMAS).split(reply, -1);
        if (parts.length == 1) {
            parts = SPACES.split(reply);
        }
        if (wanted > parts.length) {
            throw new IllegalArgumentException("'" + reply + "' has " + parts.length + " parts, not " + wanted);
        }
        return parts[wanted - 1];
    }
}
