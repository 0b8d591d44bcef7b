package railwitness.drivers.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.SheetTable;

/** Reads a bench sheet and refuses what cannot stand together. */
final class BenchReader {
    private final SheetTable root;

    BenchReader(SheetTable root) {
        this.root = root;
    }

    BenchSheet read() {
        SheetTable bench = root.table("bench", "the bench as a whole");
        Source source = bench.choice("source", "what feeds the unit's input", Source.values(), Source::word)
                .orElse(Source.SUPPLY);
        double mainsHz = bench.number("mains_Hz", "frequency of the mains; integration times are cycles of it")
                .between(45, 65)
                .orElse(50.0);
        BenchSheet sheet = new BenchSheet(
                bench.text("name", "name of the bench, for the certificate").required(),
                bench.number("ambient_degC", "temperature of the room")
                        .between(-20, 60)
                        .orElse(23.0),
                source,
                bench.number("lead_resistance_ohm", "from the source to the unit's terminals, both leads")
                        .between(0, 1)
                        .orElse(0.0),
                mainsHz,
                seconds(bench.number("interval_s", "one round of readings")
                        .between(0.02, 60)
                        .orElse(0.5)),
                instruments(mainsHz),
                handRead(),
                banks(),
                bench.text(
                                "supply_without_protection",
                                "why a supply without over-voltage or over-current protection is accepted, in words")
                        .optional(),
                bench.text(
                                "without_guardian",
                                "where no second process can hold the ports: why a run is accepted in which nothing"
                                        + " switches off when this program dies, in words")
                        .optional(),
                seconds(bench.number("patience_s", "longest pause of the program before the guardian switches off")
                        .between(0.5, 10)
                        .orElse(1.0)));
        refuseMissingSupply(sheet);
        return sheet;
    }

    static Duration seconds(double seconds) {
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }

    private final Set<String> names = new HashSet<>();
    private final Set<String> ports = new HashSet<>();
    private final Set<Channel> channels = new TreeSet<>();
    private final Set<Channel> pictured = new TreeSet<>();
    private final Set<String> loadedRails = new HashSet<>();

    private List<InstrumentSheet> instruments(double mainsHz) {
        List<InstrumentSheet> instruments = new ArrayList<>();
        for (SheetTable table : root.tables("instrument", "one instrument with a wire")) {
            InstrumentSheet instrument = new InstrumentReader(table, mainsHz).read();
            once(table, "name", names, instrument.name());
            once(table, "port", ports, instrument.port().port());
            Set<Channel> seen = instrument.isScope() ? pictured : channels;
            instrument.reads().forEach(channel -> once(table, "reads", seen, channel));
            if (instrument.duty() instanceof Duty.AsLoad load) {
                once(table, "rail", loadedRails, load.setting().rail());
            }
            instruments.add(instrument);
        }
        return instruments;
    }

    private static <T> void once(SheetTable table, String key, Set<T> seen, T value) {
        if (!seen.add(value)) {
            table.fault(key, "gives " + value + " a second time on this bench");
        }
    }

    private List<HandRead> handRead() {
        List<HandRead> meters = new ArrayList<>();
        for (SheetTable table : root.tables("hand_read", "a meter without a wire, read by the person")) {
            String name = table.text("name", "its name").required();
            Channel channel = InstrumentReader.channel(
                    table, "reads", table.text("reads", "the channel it reads").required());
            once(table, "name", names, name);
            once(table, "reads", channels, channel);
            meters.add(new HandRead(
                    name,
                    channel,
                    table.number("range", "range in use, in the unit that the meter shows")
                            .above(0)
                            .optionalNumber(),
                    AccuracyReader.optional(table.table("accuracy", "limits of its error")),
                    Calibration.of(table),
                    table.text("meter", "the meter that is moved here, where one serves several places; its name")
                            .optional(),
                    shunt(table, channel),
                    table.number("shunt_tolerance_pct", "limit of the shunt's error")
                            .between(0, 20)
                            .orElse(0.0),
                    InstrumentReader.band(table)));
        }
        return meters;
    }

    private static OptionalDouble shunt(SheetTable table, Channel channel) {
        OptionalDouble ohms = table.number("shunt_ohm", "resistance of the shunt on which it shows volts")
                .between(1e-6, 100)
                .optionalNumber();
        if (ohms.isPresent() && channel.quantity() != Quantity.CURRENT) {
            table.fault("shunt_ohm", "belongs to a current that is read as the voltage across a shunt");
        }
        return ohms;
    }

    private List<ResistorBank> banks() {
        List<ResistorBank> banks = new ArrayList<>();
        for (SheetTable table : root.tables("resistor_bank", "load resistors the person switches")) {
            String rail = InstrumentReader.rail(table);
            once(table, "rail", loadedRails, rail);
            banks.add(new ResistorBank(
                    rail,
                    table.numbers("resistances_ohm", "resistances to choose from, one at a time")
                            .between(0.1, 1e6)
                            .count(1, 100)
                            .required(),
                    table.number("tolerance_pct", "limit of their error")
                            .between(0, 20)
                            .orElse(5.0),
                    table.number("rating_W", "what each may take").above(0).optionalNumber(),
                    Calibration.of(table)));
        }
        return banks;
    }

    private void refuseMissingSupply(BenchSheet sheet) {
        long supplies = sheet.instruments().stream()
                .filter(instrument -> instrument.duty() instanceof Duty.AsSupply)
                .count();
        if (supplies > 1) {
            root.fault("instrument", "gives " + supplies + " supplies; the unit has one");
        }
        if (supplies == 0 && sheet.source() != Source.BATTERY) {
            root.fault(
                    "instrument",
                    "gives no supply; add one of kind \"supply\" (port = \"by hand\" where"
                            + " it has only knobs), or set source = \"battery\"");
        }
    }
}
