package railwitness.safety.power;

import java.util.List;
import railwitness.drivers.reading.Channel;

/**
 * What is watched after power.
 *
 * @param volts the voltage channel of each rail, read against 0 V
 * @param inputVolts channels that show the voltage at the unit's input, the supply's own read-back among them
 * @param touchVolts highest voltage that may be touched, V, above zero
 */
public record Rails(List<Channel> volts, List<Channel> inputVolts, double touchVolts) {
    public Rails {
        volts = List.copyOf(volts);
        inputVolts = List.copyOf(inputVolts);
        if (!(touchVolts > 0 && touchVolts <= Discharge.HAZARD_VOLTS)) {
            throw new IllegalArgumentException(
                    "touch limit " + touchVolts + " V must be above zero and at most " + Discharge.HAZARD_VOLTS + " V");
        }
    }
}
