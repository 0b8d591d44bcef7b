/** Operating points: what the readings of a step come to, and what speaks against them; while it runs and ever after. */
package railwitness.logger.recording.points;
