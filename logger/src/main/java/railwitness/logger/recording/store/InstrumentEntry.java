package railwitness.logger.recording.store;

import railwitness.drivers.instrument.Identity;

/**
 * An instrument of the bench.
 *
 * @param name its name in the bench sheet
 * @param kind supply, load, meter, scope
 * @param port where it is connected; empty for a hand-read meter
 * @param dialect name of its dialect; empty when it has none
 * @param identity the four fields it answered
 * @param accuracy its accuracy and calibration as the bench sheet states them; empty when it states none
 */
public record InstrumentEntry(String name, String kind, String port, String dialect, Identity identity, String accuracy)
        implements Entry {}
