package railwitness.logger.recording.points;

import railwitness.drivers.instrument.LoadSetting;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Quantity;

/**
 * The load resistor that a person switched to a rail. It is kept as a reading of its own in every average it holds for:
 * so it stays beside the voltages that were read with it, also in exported tables.
 */
public final class SwitchedResistor {
    private SwitchedResistor() {}

    /** Where it is kept: {@code plus-load.resistance}. */
    public static Channel channel(String rail) {
        return new Channel(LoadSetting.nodeBesideMeter(rail), Quantity.RESISTANCE);
    }

    /** @param ohms above 0 */
    public static Measured reading(String rail, double ohms, long nanos) {
        return new Measured(channel(rail), ohms, nanos, nanos);
    }

    /** Whether a node is that of a load at a rail, not a rail. */
    static boolean isLoad(String node) {
        return node.endsWith(LoadSetting.nodeBesideMeter(""));
    }
}
