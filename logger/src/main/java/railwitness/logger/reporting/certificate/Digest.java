package railwitness.logger.reporting.certificate;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A session's digest as it is printed: 64 hexadecimal digits in eight groups. */
final class Digest {
    static final int DIGITS = 64;
    private static final int GROUP = 8;
    private static final Pattern PRINTED = Pattern.compile("Session digest\\s+((?:[0-9a-f]\\s*){" + DIGITS + "})");

    private Digest() {}

    static String grouped(String seal) {
        return seal.replaceAll("(.{" + GROUP + "})(?=.)", "$1 ");
    }

    /** The digest in printed text; empty where none stands there. */
    static Optional<String> printedIn(String text) {
        Matcher matcher = PRINTED.matcher(text.toLowerCase(Locale.ROOT).replace("session digest", "Session digest"));
        return matcher.find() ? Optional.of(matcher.group(1).replaceAll("\\s", "")) : Optional.empty();
    }
}
