/** From a design sheet to the unit of the virtual bench: what the sheet does not know is taken from the usual kind. */
package railwitness.logger.recording.rehearsal;
