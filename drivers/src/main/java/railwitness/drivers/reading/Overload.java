package railwitness.drivers.reading;

/** The instrument said that the value lies outside its range. */
public record Overload(Channel channel, long requestedNanos, long repliedNanos) implements Reading {}
