/**
 * What instruments say and how (IEEE 488.2, SCPI-1999): numbers, the error queue, status bits, headers, and the dialogue
 * with one instrument, one exchange at a time.
 */
package railwitness.drivers.scpi;
