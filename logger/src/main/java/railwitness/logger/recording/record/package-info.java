/**
 * A session as it happens: polling, steps, the order of events from cautions to discharged rails. Every reading passes
 * the interlock first, then the recorder, then the step that waits for it.
 */
package railwitness.logger.recording.record;
