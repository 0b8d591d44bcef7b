package railwitness.logger.text;

import java.io.FilterWriter;
import java.io.IOException;
import java.io.Writer;

/** Writes to people: whatever would act on their terminal is shown as {@link VisibleText} shows it; line ends stay. */
public final class VisibleWriter extends FilterWriter {
    private char half;

    public VisibleWriter(Writer out) {
        super(out);
    }

    @Override
    public void write(int unit) throws IOException {
        char next = (char) unit;
        if (half != 0) {
            String both = Character.isLowSurrogate(next) ? "" + half + next : half + "\uFFFD";
            half = 0;
            out.write(VisibleText.line(both));
            if (both.charAt(1) == next) {
                return;
            }
        }
        if (Character.isHighSurrogate(next)) {
            half = next;
        } else {
            out.write(
                    next == '\n' || next == '\r' || next == '\t' ? String.valueOf(next) : VisibleText.line("" + next));
        }
    }

    @Override
    public void write(char[] units, int from, int count) throws IOException {
        write(new String(units, from, count), 0, count);
    }

    @Override
    public void write(String text, int from, int count) throws IOException {
        for (int i = from; i < from + count; i++) {
            write(text.charAt(i));
        }
    }
}
