/** Pictures of lines as the screen shows them. */
package railwitness.logger.screen.chart;
