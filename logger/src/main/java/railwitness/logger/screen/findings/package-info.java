/** The stage that shows what a session found. */
package railwitness.logger.screen.findings;
