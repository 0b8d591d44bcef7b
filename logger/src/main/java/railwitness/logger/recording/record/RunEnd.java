package railwitness.logger.recording.record;

import railwitness.logger.recording.store.SessionState;

/**
 * How a run ended.
 *
 * @param state complete, stopped or tripped
 * @param offConfirmed whether the supply said that it is off
 * @param words what is off and what is still charged
 */
public record RunEnd(SessionState state, boolean offConfirmed, String words) {}
