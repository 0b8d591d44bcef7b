/** The stage with all recorded sessions. */
package railwitness.logger.ui.screen.sessions;
