package railwitness.drivers.rehearsal;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;

/**
 * An instrument at its place on the virtual bench. Made by {@link #supply}, {@link #meter}, {@link #load} or {@link
 * #scope} and refined by the {@code with...} methods.
 *
 * @param name as in the bench sheet
 * @param port by which it is opened
 * @param dialect name of the dialect it speaks
 * @param reads the channels it is wired to; of a load and a supply these may be empty
 * @param rail which rail a load is on; empty for the others
 * @param accuracy what the data sheet states per quantity; exact where none is stated
 * @param shuntOhm shunt whose drop a meter reads, ohm; nought when it reads the quantity itself
 * @param shuntToleranceShare how far the shunt may be off, as a share of it
 * @param highestVolts of a supply
 * @param highestAmps of a supply or load
 * @param drivesRemote whether a supply's second channel or relay is wired to the unit's remote turn-on
 * @param bandLowHz lower end of an AC meter's band
 * @param bandHighHz upper end of it
 * @param baud of its port
 * @param mainsHz for the integration time
 */
public record Fixture(
        Kind kind,
        String name,
        String port,
        String dialect,
        List<Channel> reads,
        String rail,
        Map<Quantity, Stated> accuracy,
        double shuntOhm,
        double shuntToleranceShare,
        double highestVolts,
        double highestAmps,
        boolean drivesRemote,
        double bandLowHz,
        double bandHighHz,
        int baud,
        double mainsHz) {

    /** What an instrument is. */
    public enum Kind {
        SUPPLY,
        METER,
        LOAD,
        SCOPE
    }

    public Fixture {
        reads = List.copyOf(reads);
        accuracy = Map.copyOf(accuracy);
        if (name.isBlank() || port.isBlank()) {
            throw new IllegalArgumentException(
                    "an instrument must have a name and a port, not '" + name + "', '" + port + "'");
        }
        if (kind == Kind.LOAD && rail.isEmpty()) {
            throw new IllegalArgumentException("load '" + name + "' must be on a rail");
        }
    }

    private static Fixture of(Kind kind, String name, List<Channel> reads, String rail) {
        String port = name.replace(' ', '-');
        return new Fixture(
                kind, name, port, "scpi-1999", reads, rail, Map.of(), 0, 0, 40, 40, false, 20, 300_000, 115_200, 50);
    }

    /** A supply of 40 V and 40 A, exact, that does not drive the remote turn-on. */
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

    /** The same on another port, in another dialect. */
    public Fixture withPort(String changedPort, String changedDialect, int changedBaud, double changedMainsHz) {
        return new Fixture(
                kind,
                name,
                changedPort,
                changedDialect,
                reads,
                rail,
                accuracy,
                shuntOhm,
                shuntToleranceShare,
                highestVolts,
                highestAmps,
                drivesRemote,
                bandLowHz,
                bandHighHz,
                changedBaud,
                changedMainsHz);
    }

    /** The same with a stated accuracy. */
    public Fixture withAccuracy(Quantity quantity, Stated stated) {
        Map<Quantity, Stated> changed = new EnumMap<>(Quantity.class);
        changed.putAll(accuracy);
        changed.put(quantity, stated);
        return new Fixture(
                kind,
                name,
                port,
                dialect,
                reads,
                rail,
                changed,
                shuntOhm,
                shuntToleranceShare,
                highestVolts,
                highestAmps,
                drivesRemote,
                bandLowHz,
                bandHighHz,
                baud,
                mainsHz);
    }

    /** The same reading the drop on a shunt. */
    public Fixture withShunt(double ohm, double toleranceShare) {
        return new Fixture(
                kind,
                name,
                port,
                dialect,
                reads,
                rail,
                accuracy,
                ohm,
                toleranceShare,
                highestVolts,
                highestAmps,
                drivesRemote,
                bandLowHz,
                bandHighHz,
                baud,
                mainsHz);
    }

    /** The same with another AC band. */
    public Fixture withBand(double lowHz, double highHz) {
        return new Fixture(
                kind,
                name,
                port,
                dialect,
                reads,
                rail,
                accuracy,
                shuntOhm,
                shuntToleranceShare,
                highestVolts,
                highestAmps,
                drivesRemote,
                lowHz,
                highHz,
                baud,
                mainsHz);
    }

    /** The same with other ratings. */
    public Fixture withHighest(double volts, double amps) {
        return new Fixture(
                kind,
                name,
                port,
                dialect,
                reads,
                rail,
                accuracy,
                shuntOhm,
                shuntToleranceShare,
                volts,
                amps,
                drivesRemote,
                bandLowHz,
                bandHighHz,
                baud,
                mainsHz);
    }

    /** The same supply, wired to the unit's remote turn-on. */
    public Fixture withRemote() {
        return new Fixture(
                kind,
                name,
                port,
                dialect,
                reads,
                rail,
                accuracy,
                shuntOhm,
                shuntToleranceShare,
                highestVolts,
                highestAmps,
                true,
                bandLowHz,
                bandHighHz,
                baud,
                mainsHz);
    }

    Stated stated(Quantity quantity) {
        return accuracy.getOrDefault(quantity, Stated.EXACT);
    }
}
