/** The readings of a recorded session as traces, from all of it down to the single reading. */
package railwitness.logger.ui.screen.readings;
