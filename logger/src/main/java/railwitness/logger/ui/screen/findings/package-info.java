/** The stage that shows what a session found. */
package railwitness.logger.ui.screen.findings;
