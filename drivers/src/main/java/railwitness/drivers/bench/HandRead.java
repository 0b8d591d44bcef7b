package railwitness.drivers.bench;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * A meter without a wire: the person reads it when asked.
 *
 * @param name of this reading
 * @param range in the unit that the meter shows: volts on a shunt
 * @param moved the meter whose leads are moved here, where one meter serves several places
 * @param shuntOhms of the shunt it stands on; empty where it shows the channel's own unit
 * @param shuntTolerancePct limit of the shunt's error, percent; zero without a shunt
 * @param bandHz lowest and highest frequency a ripple is measured in; empty where not stated
 */
public record HandRead(
        String name,
        Channel reads,
        OptionalDouble range,
        Optional<Accuracy> accuracy,
        Calibration calibration,
        Optional<String> moved,
        OptionalDouble shuntOhms,
        double shuntTolerancePct,
        List<Double> bandHz) {
    public HandRead {
        bandHz = List.copyOf(bandHz);
    }

    /** A meter of its own that stays where it is. */
    public HandRead(
            String name, Channel reads, OptionalDouble range, Optional<Accuracy> accuracy, Calibration calibration) {
        this(name, reads, range, accuracy, calibration, Optional.empty(), OptionalDouble.empty(), 0, List.of());
    }

    /** With nothing stated of its calibration. */
    public HandRead(String name, Channel reads, OptionalDouble range, Optional<Accuracy> accuracy) {
        this(name, reads, range, accuracy, Calibration.NOT_STATED);
    }

    /** The thing itself: two readings with the same one share its errors. */
    public String meter() {
        return moved.orElse(name);
    }

    /** What it measures itself. */
    public Quantity function() {
        return shuntOhms.isPresent() ? Quantity.VOLTAGE : reads.quantity();
    }

    /** What it shows divided by this is the channel's value. */
    public double perUnit() {
        return shuntOhms.orElse(1);
    }

    /** Whether its leads are at the same place as for another reading: then only its function is changed. */
    public boolean isAtPlaceOf(HandRead other) {
        return reads.node().equals(other.reads().node())
                && shuntOhms.isPresent() == other.shuntOhms().isPresent();
    }

    /** Worth of its last digit in the channel's unit; 0 where it is not stated. */
    public double digit() {
        return accuracy.map(Accuracy::resolution).orElse(0.0) / perUnit();
    }
}
