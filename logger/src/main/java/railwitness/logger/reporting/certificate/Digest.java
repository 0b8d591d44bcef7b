package railwitness.logger.reporting.certificate;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A session's digest as it is printed: 64 hexadecimal digits in eight groups. */
public final class Digest {
    static final int DIGITS = 64;
    private static final int GROUP = 8;
    private static final Pattern PRINTED = Pattern.compile("Session digest\\s+((?:[0-9a-f]\\s*){" + DIGITS + "})");

    private Digest() {}

    /** SHA-256 of a text's UTF-8, 64 hexadecimal digits. */
    public static String of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    static String of(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public static String grouped(String seal) {
        return seal.replaceAll("(.{" + GROUP + "})(?=.)", "$1 ");
    }

    /** The digest in printed text; empty where none stands there. */
    static Optional<String> printedIn(String text) {
        Matcher matcher = PRINTED.matcher(text.toLowerCase(Locale.ROOT).replace("session digest", "Session digest"));
        return matcher.find() ? Optional.of(matcher.group(1).replaceAll("\\s", "")) : Optional.empty();
    }
}
