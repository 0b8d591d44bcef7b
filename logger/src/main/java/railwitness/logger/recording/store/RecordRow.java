package railwitness.logger.recording.store;

/**
 * A row of one of the record tables.
 *
 * @param seq its number in recording order
 * @param cells each null, Long, Double, String or byte[], in the table's order
 */
record RecordRow(RecordTable table, long seq, Object[] cells) {}
