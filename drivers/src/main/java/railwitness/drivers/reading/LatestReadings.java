package railwitness.drivers.reading;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The last reading of each channel, whose times say how old it is. Not for several threads at once. */
public final class LatestReadings {
    private final Map<Channel, Reading> last = new HashMap<>();
    private final Map<Channel, Measured> numbers = new HashMap<>();

    /** Every reading, in the order in which they were answered. */
    public void heard(Reading reading) {
        last.put(reading.channel(), reading);
        if (reading instanceof Measured measured) {
            numbers.put(reading.channel(), measured);
        }
    }

    /** The last number of that channel, also where a later reading was none. */
    public Optional<Measured> number(Channel channel) {
        return Optional.ofNullable(numbers.get(channel));
    }

    /** The last number, where it was asked for at that time, ns, or later. */
    public Optional<Measured> number(Channel channel, long askedFromNanos) {
        return number(channel).filter(reading -> reading.requestedNanos() >= askedFromNanos);
    }

    /** The last reading of that channel, where it is a number answered at that time, ns, or later. */
    public Optional<Measured> fresh(Channel channel, double answeredFromNanos) {
        return last.get(channel) instanceof Measured measured && measured.repliedNanos() >= answeredFromNanos
                ? Optional.of(measured)
                : Optional.empty();
    }

    /** The last reading of each channel, as they are now. */
    public Map<Channel, Reading> all() {
        return Map.copyOf(last);
    }
}
