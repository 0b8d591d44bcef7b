package railwitness.logger.reporting.certificate;

/**
 * A short fact behind its name.
 *
 * @param mostLines on the first page; where it needs more, the whole of it stands inside
 */
record Fact(String name, String value, int mostLines) {}
