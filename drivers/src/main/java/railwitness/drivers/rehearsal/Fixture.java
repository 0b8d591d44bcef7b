package railwitness.drivers.rehearsal;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * An instrument at its place on the virtual bench. Made by {@link #supply}, {@link #meter}, {@link #load} or {@link
 * #scope} and refined by the {@code with...} methods; from a bench sheet by {@link BenchFixtures}.
 *
 * @param name as in the bench sheet
 * @param reads the channels it is wired to; of a load and a supply these may be empty
 * @param rail which rail a load is on; empty for the others
 * @param accuracy what the data sheet states per quantity; exact where none is stated
 */
public record Fixture(
        Kind kind,
        String name,
        Talk talk,
        List<Channel> reads,
        String rail,
        Map<Quantity, Stated> accuracy,
        Leads leads,
        Ratings ratings) {

    /** What an instrument is. */
    public enum Kind {
        SUPPLY,
        METER,
        LOAD,
        SCOPE
    }

    /**
     * How it is talked to.
     *
     * @param port by which it is opened
     * @param dialect name of the dialect it speaks
     * @param terminator ends its replies on a terminal
     * @param baud bits per second
     */
    public record Talk(String port, String dialect, String terminator, int baud) {
        public Talk {
            if (port.isBlank() || baud <= 0) {
                throw new IllegalArgumentException(
                        "port '" + port + "' must have a name, and " + baud + " baud be above zero");
            }
        }

        /** Whether it obeys only once it was told to be remote. */
        boolean remoteFirst() {
            return dialect.contains("remote");
        }

        boolean channels() {
            return dialect.contains("channels");
        }
    }

    /**
     * What a meter's leads are on.
     *
     * @param shuntOhm shunt whose drop it reads; zero when it reads the quantity itself
     * @param shuntToleranceShare how far the shunt may be off, as a share of it
     * @param bandLowHz lower end of its AC band
     * @param bandHighHz upper end
     * @param mainsHz for the integration time
     */
    public record Leads(
            double shuntOhm, double shuntToleranceShare, double bandLowHz, double bandHighHz, double mainsHz) {}

    /**
     * What a supply or load can do.
     *
     * @param channel the output that feeds the unit, 1 or more
     * @param remoteChannel the output wired to the unit's remote turn-on line (so is the relay); empty for none
     */
    public record Ratings(double highestVolts, double highestAmps, int channel, OptionalInt remoteChannel) {}

    public Fixture {
        reads = List.copyOf(reads);
        accuracy = Map.copyOf(accuracy);
        if (name.isBlank()) {
            throw new IllegalArgumentException("an instrument must have a name");
        }
        if (kind == Kind.LOAD && rail.isEmpty()) {
            throw new IllegalArgumentException("load '" + name + "' must be on a rail");
        }
    }

    private static Fixture of(Kind kind, String name, List<Channel> reads, String rail) {
        Talk talk = new Talk(name.replace(' ', '-'), "scpi-1999", "\n", 115_200);
        Leads leads = new Leads(0, 0, 20, 300_000, 50);
        Ratings ratings = new Ratings(40, 40, 1, OptionalInt.empty());
        return new Fixture(kind, name, talk, reads, rail, Map.of(), leads, ratings);
    }

    /** An exact supply of 40 V and 40 A that does not drive the remote turn-on. */
    public static Fixture supply(String name) {
        return of(Kind.SUPPLY, name, List.of(), "");
    }

    /** An exact meter on a channel such as {@code plus.voltage}. */
    public static Fixture meter(String name, String channel) {
        return of(Kind.METER, name, List.of(Channel.of(channel)), "");
    }

    /** An exact electronic load on a rail. */
    public static Fixture load(String name, String rail) {
        return of(Kind.LOAD, name, List.of(), rail);
    }

    /** An oscilloscope on a channel such as {@code plus.ripple}. */
    public static Fixture scope(String name, String channel) {
        return of(Kind.SCOPE, name, List.of(Channel.of(channel)), "");
    }

    /** The same, talked to in another way. */
    public Fixture withTalk(Talk changed) {
        return new Fixture(kind, name, changed, reads, rail, accuracy, leads, ratings);
    }

    /** The same with a stated accuracy. */
    public Fixture withAccuracy(Quantity quantity, Stated stated) {
        Map<Quantity, Stated> changed = new EnumMap<>(Quantity.class);
        changed.putAll(accuracy);
        changed.put(quantity, stated);
        return new Fixture(kind, name, talk, reads, rail, changed, leads, ratings);
    }

    /** The same with its leads elsewhere. */
    public Fixture withLeads(Leads changed) {
        return new Fixture(kind, name, talk, reads, rail, accuracy, changed, ratings);
    }

    /** The same reading the drop on a shunt. */
    public Fixture withShunt(double ohm, double toleranceShare) {
        return withLeads(new Leads(ohm, toleranceShare, leads.bandLowHz(), leads.bandHighHz(), leads.mainsHz()));
    }

    /** The same with other ratings. */
    public Fixture withRatings(Ratings changed) {
        return new Fixture(kind, name, talk, reads, rail, accuracy, leads, changed);
    }

    /** The same on another port, in another dialect with its usual terminator. */
    public Fixture withPort(String port, String dialect, int baud, double mainsHz) {
        String terminator = dialect.contains("remote") ? "\r\n" : "\n";
        Leads changed = new Leads(
                leads.shuntOhm(), leads.shuntToleranceShare(), leads.bandLowHz(), leads.bandHighHz(), mainsHz);
        return withTalk(new Talk(port, dialect, terminator, baud)).withLeads(changed);
    }

    /** The same with another AC band. */
    public Fixture withBand(double lowHz, double highHz) {
        return withLeads(new Leads(leads.shuntOhm(), leads.shuntToleranceShare(), lowHz, highHz, leads.mainsHz()));
    }

    /** The same with other highest settings. */
    public Fixture withHighest(double volts, double amps) {
        return withRatings(new Ratings(volts, amps, ratings.channel(), ratings.remoteChannel()));
    }

    /** The same supply, its second channel and its relay wired to the unit's remote turn-on. */
    public Fixture withRemote() {
        return withRatings(
                new Ratings(ratings.highestVolts(), ratings.highestAmps(), ratings.channel(), OptionalInt.of(2)));
    }

    String port() {
        return talk.port();
    }

    Stated stated(Quantity quantity) {
        return accuracy.getOrDefault(quantity, Stated.EXACT);
    }
}
