package railwitness.logger.record;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;

/** What stands between a unit's output terminals at this moment, as the meters say. */
public final class RailsNow {
    private RailsNow() {}

    /**
     * The highest voltage between any two of the rails and 0 V.
     *
     * @param rails their names
     * @param last the last reading of each channel
     * @return V, nought or more; empty where no rail gives a number
     */
    public static OptionalDouble between(List<String> rails, Map<Channel, Reading> last) {
        double[] volts = rails.stream()
                .map(rail -> last.get(new Channel(rail, Quantity.VOLTAGE)))
                .filter(Measured.class::isInstance)
                .mapToDouble(reading -> ((Measured) reading).value())
                .toArray();
        if (volts.length == 0) {
            return OptionalDouble.empty();
        }
        double highest = 0;
        double lowest = 0;
        for (double one : volts) {
            highest = Math.max(highest, one);
            lowest = Math.min(lowest, one);
        }
        return OptionalDouble.of(highest - lowest);
    }
}
