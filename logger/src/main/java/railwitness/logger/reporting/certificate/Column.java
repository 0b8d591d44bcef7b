package railwitness.logger.reporting.certificate;

/**
 * One column of a table.
 *
 * @param head its title
 * @param share of the table's width, relative to the other columns'
 * @param right true for numbers
 */
public record Column(String head, float share, boolean right) {
    public static Column words(String head, float share) {
        return new Column(head, share, false);
    }

    public static Column numbers(String head, float share) {
        return new Column(head, share, true);
    }
}
