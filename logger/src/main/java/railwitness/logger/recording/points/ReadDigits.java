package railwitness.logger.recording.points;

import java.math.BigDecimal;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.Trace;

/**
 * How finely a person reads a meter without a wire: what was typed with the most decimals tells what its display shows. A zero
 * at the end is not kept with a number, so that one reading alone may look coarser than it was; it is never taken for finer.
 */
final class ReadDigits {
    private static final int MOST = 6;

    private final Map<Channel, Integer> decimals = new TreeMap<>();

    /** Readings of one channel by a person. */
    void seen(Trace trace) {
        for (int i = 0; i < trace.count(); i++) {
            int places =
                    BigDecimal.valueOf(trace.values()[i]).stripTrailingZeros().scale();
            decimals.merge(trace.channel(), Math.min(MOST, Math.max(0, places)), Math::max);
        }
    }

    /** Decimals of the channel's readings; empty where a person read none. */
    OptionalInt decimals(Channel channel) {
        Integer places = decimals.get(channel);
        return places == null ? OptionalInt.empty() : OptionalInt.of(places);
    }
}
