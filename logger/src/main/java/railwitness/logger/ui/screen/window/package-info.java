/** The window: the band that is always there, the stages under it, the line at the bottom. */
package railwitness.logger.ui.screen.window;
