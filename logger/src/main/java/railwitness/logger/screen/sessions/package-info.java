/** The stage with all recorded sessions. */
package railwitness.logger.screen.sessions;
