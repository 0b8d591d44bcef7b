package railwitness.drivers.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A header as SCPI-1999 writes it: capitals are the short form, brackets may be left out, {@code #} stands for a number
 * at the end of a mnemonic (1 when left out): {@code MEASure[:SCALar]:VOLTage[:DC]?}. Either form is accepted, in either
 * case, and nothing in between.
 */
public final class Header {
    private static final Pattern MNEMONIC = Pattern.compile("(\\*?[A-Z0-9]+)([a-z]*)(#?)");
    private final Pattern pattern;

    private Header(Pattern pattern) {
        this.pattern = pattern;
    }

    /** @throws IllegalArgumentException when it is not so written */
    public static Header of(String written) {
        boolean query = written.endsWith("?");
        String body = query ? written.substring(0, written.length() - 1) : written;
        StringBuilder regex = new StringBuilder(":?");
        int at = 0;
        while (at < body.length()) {
            char c = body.charAt(at);
            if (c == '[') {
                regex.append("(?:");
                at++;
            } else if (c == ']') {
                regex.append(")?");
                at++;
            } else if (c == ':') {
                regex.append(regex.length() == 2 ? "" : ":");
                at++;
            } else {
                Matcher mnemonic = MNEMONIC.matcher(body).region(at, body.length());
                if (!mnemonic.lookingAt()) {
                    throw new IllegalArgumentException("'" + written + "' is not written as a header");
                }
                append(regex, mnemonic);
                at = mnemonic.end();
            }
        }
        return new Header(Pattern.compile(regex + (query ? "\\?" : ""), Pattern.CASE_INSENSITIVE));
    }

    private static void append(StringBuilder regex, Matcher mnemonic) {
        String brief = mnemonic.group(1);
        regex.append("(?:").append(Pattern.quote(brief + mnemonic.group(2)));
        regex.append('|').append(Pattern.quote(brief)).append(')');
        if (!mnemonic.group(3).isEmpty()) {
            regex.append("(\\d*)");
        }
    }

    /** True when the header of a message (without its parameters) is this one. */
    public boolean matches(String header) {
        return pattern.matcher(header).matches();
    }

    /** The numbers at the places of {@code #}, when the header is this one. */
    public Optional<List<Integer>> numbers(String header) {
        Matcher matcher = pattern.matcher(header);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        List<Integer> numbers = new ArrayList<>();
        for (int i = 1; i <= matcher.groupCount(); i++) {
            String digits = matcher.group(i);
            numbers.add(digits == null || digits.isEmpty() ? 1 : Integer.parseInt(digits));
        }
        return Optional.of(numbers);
    }

    /**
     * The short form of a mnemonic by SCPI's rule: four letters or fewer stay; else the first four, or the first three
     * where the fourth is a vowel.
     */
    public static String shortForm(String mnemonic) {
        String upper = mnemonic.toUpperCase(Locale.ROOT);
        if (upper.length() <= 4) {
            return upper;
        }
        return "AEIOU".indexOf(upper.charAt(3)) >= 0 ? upper.substring(0, 3) : upper.substring(0, 4);
    }
}
