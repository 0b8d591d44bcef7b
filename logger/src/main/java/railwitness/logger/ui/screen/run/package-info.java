/** The stage on which the unit is run: the sheet that fills itself, and the traces beside it. */
package railwitness.logger.ui.screen.run;
