package railwitness.logger.screen.form;

import railwitness.logger.screen.paper.Words;

/** What the tables of sheets are called. */
public final class FormWords {
    private FormWords() {}

    /** Such as "Rail 2" for the second {@code [[rail]]}. */
    public static String table(String header, int place, int of) {
        String name = Words.orElse("table." + header.replaceAll("[\\[\\]]", ""), header);
        return of > 1 ? name + " " + (place + 1) : name;
    }
}
