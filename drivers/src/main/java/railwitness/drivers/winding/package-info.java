/**
 * A transformer alone on the bench: its four windings, how it can be connected, what may be wrong with it, and what ideal
 * meters would read. It shares no line with the analysis, which works back from such readings.
 */
package railwitness.drivers.winding;
