package railwitness.logger.recording.store;

import railwitness.drivers.reading.Waveform;

/**
 * A waveform of a scope.
 *
 * @param nanos when it was asked for, ns
 * @param waveform its samples
 */
public record WaveformEntry(long nanos, Waveform waveform) implements Entry {}
