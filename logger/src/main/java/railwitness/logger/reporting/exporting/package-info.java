/** The way out: a session as CSV tables, findings as JSON and sheets as they were, for any other program. */
package railwitness.logger.reporting.exporting;
