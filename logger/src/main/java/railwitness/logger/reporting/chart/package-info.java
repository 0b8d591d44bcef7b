/**
 * What a session found, as pictures: measured solid, predicted dashed, limits named. Drawn on any {@code Graphics2D}, so
 * that paper and screen show the same.
 */
package railwitness.logger.reporting.chart;
