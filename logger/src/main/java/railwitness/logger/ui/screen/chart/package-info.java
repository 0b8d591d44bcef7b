/** Pictures of lines as the screen shows them. */
package railwitness.logger.ui.screen.chart;
