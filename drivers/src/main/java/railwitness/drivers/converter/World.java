package railwitness.drivers.converter;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * The one unit under test that all virtual instruments look at, with time: rails are led up by the soft start and
 * discharge through bleeders and loads, two bodies warm up. It is worked out only as far as somebody asks, and never
 * goes back: asked for a time gone by, it shows the present. Safe for several threads.
 *
 * <p>Times are nanoseconds of the session's axis.
 */
public final class World {
    private static final double STEADY_STALE_SECONDS = 0.5;

    private static final double BATTERY_LIMIT_AMPS = 1000;
    private static final double SHORTEST_SECONDS = 2e-5;

    private final LiveUnit unit;
    private final Map<String, Map<String, Draw>> draws = new TreeMap<>();
    private final List<Consumer<World>> watchers = new ArrayList<>();
    private final Surroundings surroundings;
    private Feed feed = new Feed(false, 0, 1);
    private double batteryVolts;
    private boolean disconnected;
    private boolean remote;
    private Apart apart;
    private double seconds;

    /** A cold unit with nothing connected to it, its remote turn-on off. */
    public World(Specimen specimen, double ambientDegC) {
        this(specimen, Surroundings.still(ambientDegC));
    }

    /** The same in a room of its own, its parts wearing as they run. */
    public World(Specimen specimen, Surroundings surroundings) {
        this.surroundings = surroundings;
        unit = new LiveUnit(specimen, surroundings);
        specimen.rails().forEach(rail -> draws.put(rail.name(), new TreeMap<>()));
    }

    /** The unit at that time, as ideal meters would see it. */
    public synchronized Balance at(long nanos) {
        double wanted = nanos / 1e9;
        if (!unit.steady() || wanted - seconds >= STEADY_STALE_SECONDS) {
            advance(wanted);
        }
        return now();
    }

    /** From now on this stands at the leads in place of the unit; null puts the unit back. */
    public synchronized void apart(long nanos, Apart instead) {
        advance(nanos / 1e9);
        apart = instead;
        unit.disturb();
    }

    /** What stands at the leads in place of the unit. */
    public synchronized Optional<Apart> apart() {
        return Optional.ofNullable(apart);
    }

    /** Temperature of what stands there: that of the unit's transformer, degC. */
    public synchronized double apartDegC() {
        return unit.transformerDegC();
    }

    /** The supply's current where it meets its voltage, by halving. */
    private Balance apartBalance() {
        Balance cold = unit.balance();
        double ohm = apart.ohm(apartDegC());
        Feed source = apartFeed();
        double low = 0;
        double high = source.on() ? source.volts() : 0;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (source.amps(middle, leadOhm()) > middle / ohm) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double amps = source.on() && !Double.isInfinite(ohm) ? low / ohm : 0;
        return new Balance(
                false,
                Double.isInfinite(ohm) ? high : low,
                amps,
                cold.rails(),
                cold.losses(),
                0,
                0,
                source.limiting(low, leadOhm()));
    }

    private Feed apartFeed() {
        return disconnected ? new Feed(false, 0, 1) : feed;
    }

    /** What stands behind the leads from now on. */
    public synchronized void feed(long nanos, Feed changed) {
        if (!changed.equals(feed)) {
            advance(nanos / 1e9);
            feed = changed;
            unit.disturb();
        }
    }

    /** A charged battery stands across the supply: it feeds the unit whatever the supply does, without a limit. */
    public synchronized void battery(double volts) {
        batteryVolts = volts;
        unit.disturb();
    }

    /** The hand disconnect between source and leads is opened, for good. */
    public synchronized void disconnect(long nanos) {
        advance(nanos / 1e9);
        disconnected = true;
        unit.disturb();
    }

    public synchronized boolean disconnected() {
        return disconnected;
    }

    private Feed standing() {
        if (disconnected || apart != null) {
            return new Feed(false, 0, 1);
        }
        if (batteryVolts <= 0) {
            return feed;
        }
        return Feed.of(feed.on() ? Math.max(feed.volts(), batteryVolts) : batteryVolts, BATTERY_LIMIT_AMPS);
    }

    /** What the supply gives, the battery left out. */
    public synchronized Feed feed() {
        return feed;
    }

    /** What one load, known by its name, draws from a rail from now on. */
    public synchronized void draw(long nanos, String rail, String load, Draw draw) {
        Map<String, Draw> onRail = draws.get(rail);
        if (onRail == null) {
            throw new IllegalArgumentException(
                    "no rail '" + rail + "'; there are " + String.join(", ", draws.keySet()));
        }
        if (!draw.equals(onRail.getOrDefault(load, Draw.NONE))) {
            advance(nanos / 1e9);
            onRail.put(load, draw);
            unit.disturb();
        }
    }

    /** Switches the unit's remote turn-on line. */
    public synchronized void remote(long nanos, boolean on) {
        if (on != remote) {
            advance(nanos / 1e9);
            remote = on;
            unit.disturb();
        }
    }

    /** Whether the unit's remote turn-on line is on. */
    public synchronized boolean remote() {
        return remote;
    }

    /** Temperature of a body: {@code heatsink}, {@code transformer}, or the ambient air for any other name, degC. */
    public synchronized double degC(long nanos, String body) {
        at(nanos);
        return switch (body) {
            case "heatsink" -> unit.heatsinkDegC();
            case "transformer" -> unit.transformerDegC();
            default -> surroundings.room().degC(seconds);
        };
    }

    /** Resistance of both leads from the source to the unit's terminals, ohm. */
    public double leadOhm() {
        return unit.specimen().input().leadOhm();
    }

    public Specimen specimen() {
        return unit.specimen();
    }

    /** Runs after every step worked out, such as a supply's protection. It may change the feed, and looks with {@link
     * #now}. */
    public synchronized void watch(Consumer<World> watcher) {
        watchers.add(watcher);
    }

    /** The state last worked out. */
    public synchronized Balance now() {
        return apart == null ? unit.balance() : apartBalance();
    }

    /** Time last worked out, s. */
    public synchronized double nowSeconds() {
        return seconds;
    }

    /** Changes the feed at the time last worked out, for watchers. */
    public synchronized void feedNow(Feed changed) {
        feed = changed;
        unit.disturb();
    }

    private void advance(double wanted) {
        while (wanted - seconds > SHORTEST_SECONDS) {
            seconds += unit.step(standing(), totals(), remote, wanted - seconds);
            for (Consumer<World> watcher : watchers) {
                watcher.accept(this);
            }
        }
    }

    private List<Draw> totals() {
        List<Draw> totals = new ArrayList<>();
        for (Specimen.Rail rail : unit.specimen().rails()) {
            Draw total = Draw.NONE;
            for (Draw draw : draws.get(rail.name()).values()) {
                total = total.with(draw);
            }
            totals.add(total);
        }
        return totals;
    }
}
