/** The stage on which it is chosen what runs the unit: the virtual bench, or real instruments. */
package railwitness.logger.ui.screen.bench;
