package railwitness.drivers.bench;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;

/**
 * A meter without a wire: the person reads it when asked.
 *
 * @param range in the channel's unit
 */
public record HandRead(
        String name, Channel reads, OptionalDouble range, Optional<Accuracy> accuracy, Calibration calibration) {
    /** With nothing stated of its calibration. */
    public HandRead(String name, Channel reads, OptionalDouble range, Optional<Accuracy> accuracy) {
        this(name, reads, range, accuracy, Calibration.NOT_STATED);
    }
}
