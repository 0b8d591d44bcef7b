package railwitness.safety.interlock;

import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import railwitness.drivers.reading.Channel;

/**
 * Something that must keep its limits and must not fall silent.
 *
 * @param name what the person calls it: input current
 * @param age how old the question behind the last answer may grow, above zero
 * @param limits what is allowed, for every phase
 */
public record Watch(String name, Subject subject, Duration age, Map<Phase, Limits> limits) {
    /** The age of what a person reads: it is judged when they read it, and asked for by nobody's clock. */
    public static final Duration BY_SIGHT = Duration.ofDays(36_500);

    public Watch {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a watch needs a name");
        }
        if (age.isNegative() || age.isZero()) {
            throw new IllegalArgumentException("age of watch '" + name + "' must be above zero, not " + age);
        }
        limits = Map.copyOf(limits);
        if (limits.size() != Phase.values().length) {
            throw new IllegalArgumentException("watch '" + name + "' needs limits for every phase");
        }
    }

    /** A watch with the same limits in all phases; {@link #during} changes single ones. */
    public static Watch of(String name, Subject subject, Duration age, Limits always) {
        Map<Phase, Limits> all = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            all.put(phase, always);
        }
        return new Watch(name, subject, age, all);
    }

    /** A watch on one channel as it is read. */
    public static Watch of(String name, Channel channel, Duration age, Limits always) {
        return of(name, new Subject.Plain(channel), age, always);
    }

    /** The same watch with other limits in one phase. */
    public Watch during(Phase phase, Limits changed) {
        Map<Phase, Limits> all = new EnumMap<>(limits);
        all.put(phase, changed);
        return new Watch(name, subject, age, all);
    }

    /** Whether a person reads it. */
    public boolean bySight() {
        return age.equals(BY_SIGHT);
    }

    boolean derived() {
        return subject.channels().size() > 1;
    }
}
