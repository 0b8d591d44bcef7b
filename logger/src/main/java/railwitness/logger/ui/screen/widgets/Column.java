package railwitness.logger.ui.screen.widgets;

import java.util.List;

/**
 * A column of a ruled sheet.
 *
 * @param head one or two lines
 * @param right numbers stand to the right
 * @param leastWidth pixels at 100 %; the contents may ask for more
 */
public record Column(List<String> head, boolean right, int leastWidth) {
    public Column {
        head = List.copyOf(head);
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
}
