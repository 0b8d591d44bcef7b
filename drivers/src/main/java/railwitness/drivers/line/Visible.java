package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Received bytes as a person can read them: ends of lines by name, what is no letter as a hexadecimal number. */
public final class Visible {
    private static final int LONGEST = 60;

    private Visible() {}

    /** At most 60 characters of the text, then how many there were. */
    public static String text(String received) {
        byte[] bytes = received.getBytes(StandardCharsets.ISO_8859_1);
        return text(bytes, bytes.length);
    }

    static String text(byte[] bytes, int count) {
        StringBuilder text = new StringBuilder();
        int shown = 0;
        for (; shown < count && text.length() < LONGEST; shown++) {
            int b = bytes[shown] & 0xff;
            text.append(
                    switch (b) {
                        case '\n' -> "<LF>";
                        case '\r' -> "<CR>";
                        default ->
                            b >= ' ' && b <= '~' ? String.valueOf((char) b) : String.format(Locale.ROOT, "<%02X>", b);
                    });
        }
        return shown < count ? text + "... (" + count + " bytes)" : text.toString();
    }
}
