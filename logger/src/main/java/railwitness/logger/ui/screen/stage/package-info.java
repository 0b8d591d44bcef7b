/** What all stages share: the desk with everything that is open on it, and how a stage shows itself to the window. */
package railwitness.logger.ui.screen.stage;
