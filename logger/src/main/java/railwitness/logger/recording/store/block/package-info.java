/** Packs the readings of one channel's minute without losing a bit, and sums them up for drawing. */
package railwitness.logger.recording.store.block;
