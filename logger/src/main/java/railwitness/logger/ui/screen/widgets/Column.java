package railwitness.logger.ui.screen.widgets;

import java.util.List;

/**
 * A column of a ruled sheet.
 *
 * @param head one or two lines
 * @param right numbers stand to the right, and are never broken
 * @param leastWidth pixels at 100 %; the contents may ask for more
 * @param rank 0 for one that is always there; of the others the highest gives way first where the place is narrow
 */
public record Column(List<String> head, boolean right, int leastWidth, int rank) {
    public Column {
        head = List.copyOf(head);
    }

    /** One that is always there. */
    public Column(List<String> head, boolean right, int leastWidth) {
        this(head, right, leastWidth, 0);
    }

    public static Column words(String... head) {
        return new Column(List.of(head), false, 40);
    }

    public static Column numbers(String... head) {
        return new Column(List.of(head), true, 40);
    }

    public static Column drawing(int leastWidth, String... head) {
        return new Column(List.of(head), false, leastWidth);
    }

    /** The same, giving way where the place is narrow: the highest rank first. */
    public Column givingWay(int wanted) {
        return new Column(head, right, leastWidth, wanted);
    }

    /** Its head in one line. */
    String title() {
        return String.join(" ", head).strip();
    }
}
