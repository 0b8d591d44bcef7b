/** Sessions side by side: before and after a repair, or many units of one model; as text, as JSON and as a PDF. */
package railwitness.logger.reporting.comparing;
