package railwitness.drivers.reading;

/** A finite number in the channel's SI unit. */
public record Measured(Channel channel, double value, long requestedNanos, long repliedNanos) implements Reading {
    public Measured {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a measured value must be finite, not " + value);
        }
    }
}
