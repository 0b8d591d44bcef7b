package railwitness.logger.recording.importing;

/**
 * How a table is written.
 *
 * @param separator between the cells
 * @param decimalComma whether a comma marks the decimals
 * @param instants whether time stands in a column {@code time} as instants (ISO 8601) instead of seconds in {@code time_s}
 * @param unitsInCells whether each cell carries its unit, such as {@code 13.8 V}, and the column's name does not
 */
public record TableForm(char separator, boolean decimalComma, boolean instants, boolean unitsInCells) {
    /** Commas between the cells, decimal points, seconds, units in the columns' names. */
    public static final TableForm USUAL = new TableForm(',', false, false, false);
}
