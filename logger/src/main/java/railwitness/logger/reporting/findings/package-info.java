/** From a recorded session to what was found: operating points out of readings, and findings as text and as JSON. */
package railwitness.logger.reporting.findings;
