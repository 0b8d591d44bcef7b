package railwitness.drivers.instrument;

import railwitness.drivers.reading.Waveform;

/** An oscilloscope that hands over a waveform of the channel it was given. */
public interface Scope extends Instrument {
    Waveform waveform();
}
