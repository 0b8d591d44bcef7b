package railwitness.logger.recording.points;

import java.util.Optional;
import java.util.Set;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * With what a bench reads a transformer that lies on it: while it is measured and ever after by the same rule. A meter on
 * the node {@code winding} comes first, then one that a person reads there, then any meter with a wire, whose leads are
 * moved; else the person's own meter, which the bench sheet does not know.
 */
public final class WindingChannels {
    private static final String WINDING = "winding";
    private static final Set<String> SOURCE = Set.of("supply", "input");

    private final BenchSheet bench;

    public WindingChannels(BenchSheet bench) {
        this.bench = bench;
    }

    /** Whether a channel is that of a meter that belongs to the transformer alone. */
    public static boolean isWinding(Channel channel) {
        return channel.node().equals(WINDING);
    }

    /** Direct voltage at a winding. */
    public Channel volts() {
        return meterOf(Quantity.VOLTAGE);
    }

    /** Alternating voltage at a winding, root mean square. */
    public Channel alternating() {
        return meterOf(Quantity.RIPPLE);
    }

    /** What rings, on a scope. */
    public Channel frequency() {
        return new Channel(WINDING, Quantity.FREQUENCY);
    }

    /** The transformer's temperature before anything is sent through it. */
    public Channel temperature() {
        Channel room = new Channel("ambient", Quantity.TEMPERATURE);
        return wired(room) ? room : new Channel(WINDING, Quantity.TEMPERATURE);
    }

    /** The current through a winding. */
    public Channel amps() {
        Channel input = new Channel("input", Quantity.CURRENT);
        return wired(input) ? input : new Channel("supply", Quantity.CURRENT);
    }

    /** Whether an instrument reads it by itself; a scope does not. */
    public boolean wired(Channel channel) {
        return channel.node().equals("supply")
                || bench.instruments().stream()
                        .anyMatch(one -> !one.isScope() && one.reads().contains(channel));
    }

    /** The meter of the bench sheet that a person reads there. */
    public Optional<HandRead> byHand(Channel channel) {
        return bench.handRead().stream()
                .filter(meter -> meter.reads().equals(channel))
                .findFirst();
    }

    /** What the meter is called; the person's own where the bench sheet has none. */
    public String name(Channel channel) {
        return bench.instruments().stream()
                .filter(one -> !one.isScope() && one.reads().contains(channel))
                .map(InstrumentSheet::name)
                .findFirst()
                .or(() -> byHand(channel).map(HandRead::name))
                .orElse("your meter");
    }

    private Channel meterOf(Quantity quantity) {
        Channel own = new Channel(WINDING, quantity);
        if (wired(own) || byHand(own).isPresent()) {
            return own;
        }
        return bench.instruments().stream()
                .filter(one -> one.duty() instanceof railwitness.drivers.bench.Duty.AsMeter)
                .flatMap(one -> one.reads().stream())
                .filter(channel -> channel.quantity() == quantity && !SOURCE.contains(channel.node()))
                .findFirst()
                .or(() -> bench.handRead().stream()
                        .map(HandRead::reads)
                        .filter(channel -> channel.quantity() == quantity && !SOURCE.contains(channel.node()))
                        .findFirst())
                .or(() -> Optional.of(new Channel("input", quantity)).filter(this::wired))
                .orElse(own);
    }
}
