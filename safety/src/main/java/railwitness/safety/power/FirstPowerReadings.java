package railwitness.safety.power;

import java.util.List;
import java.util.Optional;
import railwitness.drivers.reading.Channel;

/**
 * What first power listens to.
 *
 * @param inputAmps the input current that is judged
 * @param currentLeads whose leads are reversed when it is negative, such as {@code the shunt's leads}
 * @param negativeAmps magnitude up to which a negative input current is the meter's own error, A
 * @param inputVolts meter at the unit's terminals, where there is one
 * @param supplyVolts the supply's own read-back
 * @param supplyAmps the supply's own read-back
 * @param rails the rails that instruments read, with what they should stand at; none where a person reads them
 *     beside a supply with a serial line
 * @param bySight true where a person reads all of this: one look at each rail is enough, and takes its time
 */
public record FirstPowerReadings(
        Channel inputAmps,
        String currentLeads,
        double negativeAmps,
        Optional<Channel> inputVolts,
        Channel supplyVolts,
        Channel supplyAmps,
        List<RailTarget> rails,
        boolean bySight) {
    /** What instruments read. */
    public FirstPowerReadings(
            Channel inputAmps,
            String currentLeads,
            double negativeAmps,
            Optional<Channel> inputVolts,
            Channel supplyVolts,
            Channel supplyAmps,
            List<RailTarget> rails) {
        this(inputAmps, currentLeads, negativeAmps, inputVolts, supplyVolts, supplyAmps, rails, false);
    }

    public FirstPowerReadings {
        rails = List.copyOf(rails);
        if (!(negativeAmps >= 0)) {
            throw new IllegalArgumentException("negative current " + negativeAmps + " A must be zero or more");
        }
    }
}
