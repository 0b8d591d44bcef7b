package railwitness.safety.power;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/**
 * The rails after power. A capacitor of C on a resistance R falls as {@code V = V0 exp(-t / (R C))} (the textbook
 * discharge of a capacitor); the logarithms of the last readings give the rate by least squares, and the time left to a
 * voltage follows from it. Times are ns on the session's axis.
 */
public final class Discharge {
    /** Highest d.c. voltage of class ES1, V (IEC 62368-1, from memory). */
    public static final double HAZARD_VOLTS = 60;

    /** A rail that would need longer than this does not fall, as far as a person at the bench is concerned. */
    public static final Duration LONGEST_WAIT = Duration.ofMinutes(10);

    /** A rail that was not read for so long is taken as charged and no longer waited for. */
    public static final Duration UNREAD = Duration.ofSeconds(5);

    private static final int KEPT = 8;
    private static final int LEAST = 4;
    private static final long LEAST_SPAN_NANOS = 1_500_000_000L;

    private record Point(double seconds, double volts) {}

    private final Rails rails;
    private final long sinceNanos;
    private final Map<Channel, Deque<Point>> points = new LinkedHashMap<>();

    /** @param sinceNanos readings asked for before this are of no interest */
    public Discharge(Rails rails, long sinceNanos) {
        this.rails = rails;
        this.sinceNanos = sinceNanos;
        rails.volts().forEach(rail -> points.put(rail, new ArrayDeque<>()));
    }

    /** Takes a reading of a rail; others are passed over. */
    public void heard(Measured reading) {
        Deque<Point> known = points.get(reading.channel());
        if (known == null || reading.requestedNanos() < sinceNanos) {
            return;
        }
        known.addLast(new Point((reading.repliedNanos() - sinceNanos) / 1e9, reading.value()));
        if (known.size() > KEPT) {
            known.removeFirst();
        }
    }

    /** True when every rail was read since power went off. */
    public boolean allSeen() {
        return points.values().stream().noneMatch(Deque::isEmpty);
    }

    /** Voltage between the rails, 0 V counted as one of them, V; empty until all were seen. */
    public OptionalDouble betweenVolts() {
        if (!allSeen() || points.isEmpty()) {
            return OptionalDouble.empty();
        }
        double highest =
                points.values().stream().mapToDouble(Discharge::last).max().orElse(0);
        double lowest =
                points.values().stream().mapToDouble(Discharge::last).min().orElse(0);
        return OptionalDouble.of(Math.max(0, highest) - Math.min(0, lowest));
    }

    /** True when the rails were seen and less than 60 V stands between them. */
    public boolean belowHazard() {
        OptionalDouble between = betweenVolts();
        return between.isPresent() && between.getAsDouble() < HAZARD_VOLTS;
    }

    /** True when this rail was last seen below the touch limit. */
    public boolean isLow(Channel rail) {
        return points.containsKey(rail) && safe(rail);
    }

    /** True when every rail was seen below the touch limit. */
    public boolean belowTouch() {
        return allSeen() && points.keySet().stream().allMatch(this::safe);
    }

    /** Rails above the touch limit that have stopped falling, or fall too slowly to be waited for. */
    public List<Channel> notFalling() {
        return points.keySet().stream()
                .filter(rail -> !safe(rail) && enough(rail))
                .filter(rail -> secondsLeft(rail).orElse(Double.POSITIVE_INFINITY) > LONGEST_WAIT.toSeconds())
                .toList();
    }

    /**
     * True when waiting is of no more use: each rail is below the touch limit, has stopped falling, or was not read for
     * {@link #UNREAD}.
     */
    public boolean over(long nowNanos) {
        List<Channel> standing = notFalling();
        return points.keySet().stream()
                .allMatch(rail -> safe(rail) || standing.contains(rail) || unread(rail, nowNanos));
    }

    private boolean unread(Channel rail, long nowNanos) {
        double last =
                points.get(rail).isEmpty() ? 0 : points.get(rail).getLast().seconds();
        return (nowNanos - sinceNanos) / 1e9 - last >= UNREAD.toSeconds();
    }

    /** Time until this rail is below the touch limit at the rate of the last readings, s; empty when it does not fall. */
    public OptionalDouble secondsLeft(Channel rail) {
        double rate = ratePerSecond(points.get(rail));
        if (points.get(rail).isEmpty() || safe(rail)) {
            return points.get(rail).isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(0);
        }
        return rate <= 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.log(Math.abs(last(points.get(rail))) / rails.touchVolts()) / rate);
    }

    /** What the person should know now, in one sentence. */
    public String words() {
        if (!allSeen()) {
            return "rails not read since power went off: take them as charged";
        }
        if (belowTouch()) {
            return "rails below " + volts(rails.touchVolts());
        }
        List<String> parts = new ArrayList<>();
        parts.add("rails still at " + volts(betweenVolts().orElse(0)) + " between them");
        longest()
                .ifPresent(seconds ->
                        parts.add(String.format(Locale.ROOT, "about %.0f s to the touch limit at this rate", seconds)));
        notFalling()
                .forEach(rail -> parts.add(rail.node() + " stays at " + volts(last(points.get(rail)))
                        + " and does not fall: discharge it through a resistor"));
        return String.join("; ", parts);
    }

    private Optional<Double> longest() {
        List<Channel> standing = notFalling();
        return points.keySet().stream()
                .filter(rail -> !standing.contains(rail) && !safe(rail))
                .map(this::secondsLeft)
                .filter(OptionalDouble::isPresent)
                .map(OptionalDouble::getAsDouble)
                .max(Double::compare);
    }

    private boolean safe(Channel rail) {
        return !points.get(rail).isEmpty() && Math.abs(last(points.get(rail))) < rails.touchVolts();
    }

    private boolean enough(Channel rail) {
        Deque<Point> known = points.get(rail);
        return known.size() >= LEAST
                && (known.getLast().seconds() - known.getFirst().seconds()) * 1e9 >= LEAST_SPAN_NANOS;
    }

    private static double last(Deque<Point> known) {
        return known.getLast().volts();
    }

    /** Least squares of ln|V| against t, sign turned; zero when there are fewer than two readings. */
    private static double ratePerSecond(Deque<Point> known) {
        List<Point> usable =
                known.stream().filter(point -> Math.abs(point.volts()) > 0).toList();
        double n = usable.size();
        double meanT = usable.stream().mapToDouble(Point::seconds).sum() / n;
        double meanY = usable.stream().mapToDouble(Discharge::log).sum() / n;
        double tt = 0;
        double ty = 0;
        for (Point point : usable) {
            double t = point.seconds() - meanT;
            tt += t * t;
            ty += t * (log(point) - meanY);
        }
        return tt > 0 ? -ty / tt : 0;
    }

    private static double log(Point point) {
        return Math.log(Math.abs(point.volts()));
    }

    private static String volts(double volts) {
        return String.format(Locale.ROOT, "%.1f V", volts);
    }
}
