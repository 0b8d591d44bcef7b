/** The stage on which the unit is described: its design sheet, with what it predicts. */
package railwitness.logger.ui.screen.unit;
