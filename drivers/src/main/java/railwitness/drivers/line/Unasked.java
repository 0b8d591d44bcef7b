package railwitness.drivers.line;

import java.util.ArrayList;
import java.util.List;

/** What came too late or unasked, kept until somebody logs it; the oldest goes where nobody does. */
final class Unasked {
    private static final int MOST = 32;
    private final List<String> texts = new ArrayList<>();

    synchronized void add(String text) {
        if (texts.size() == MOST) {
            texts.remove(0);
        }
        texts.add(Visible.text(text));
    }

    synchronized List<String> taken() {
        List<String> all = List.copyOf(texts);
        texts.clear();
        return all;
    }
}
