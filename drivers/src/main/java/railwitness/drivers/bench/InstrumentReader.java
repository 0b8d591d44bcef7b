package railwitness.drivers.bench;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.instrument.LoadSetting;
import railwitness.drivers.instrument.MeterSetting;
import railwitness.drivers.instrument.ScopeSetting;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.PortSettings.Parity;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.SheetTable;

/** Reads one {@code [[instrument]]}. */
final class InstrumentReader {
    private static final Map<String, String> TERMINATORS = Map.of("LF", "\n", "CR", "\r", "CR LF", "\r\n");
    private static final List<Quantity> METERED =
            List.of(Quantity.VOLTAGE, Quantity.CURRENT, Quantity.RIPPLE, Quantity.RESISTANCE, Quantity.TEMPERATURE);

    private static final String OWN_DIALECT = ".toml";

    private final SheetTable table;
    private final double mainsHz;
    private final int channel;
    private double shuntTolerancePct;
    private Calibration shuntCalibration = Calibration.NOT_STATED;

    InstrumentReader(SheetTable table, double mainsHz) {
        this.table = table;
        this.mainsHz = mainsHz;
        this.channel = table.whole("channel", "channel of the instrument")
                .between(1, 99)
                .orElse(1);
    }

    InstrumentSheet read() {
        Optional<String> terminator = table.text("terminator", "what ends a message; the dialect's own where left out")
                .oneOf("LF", "CR", "CR LF")
                .optional();
        String kind = table.text("kind", "what it is")
                .oneOf("supply", "meter", "load", "scope")
                .required();
        Duty duty = duty(kind);
        PortSettings port = port(terminator.orElse("LF"));
        byHand(kind, port);
        return new InstrumentSheet(
                table.text("name", "its name, each once").required(),
                port,
                terminator.isPresent(),
                table.text("dialect", "how it is spoken to; chosen by its identity where left out")
                        .allow(InstrumentReader::isDialect, dialects())
                        .optional(),
                table.text("expect", "what its answer to *IDN? must contain, such as the model")
                        .optional(),
                BenchReader.seconds(table.number("answer_within_s", "longest wait for an answer")
                        .between(0.05, 60)
                        .orElse(1.0)),
                reads(duty),
                accuracy(),
                shuntTolerancePct,
                band(table),
                Calibration.of(table),
                shuntCalibration,
                duty);
    }

    /** A person sets a supply; what they read or switch otherwise has tables of its own. */
    private void byHand(String kind, PortSettings port) {
        if (!port.port().equals(InstrumentSheet.BY_HAND)) {
            return;
        }
        if (!kind.equals("supply")) {
            table.fault(
                    "port",
                    "is \"by hand\", which only a supply can be: a meter that a person reads is a [[hand_read]], load"
                            + " resistors that a person switches are a [[resistor_bank]]");
        } else if (table.flag("drives_remote", "its second channel or relay switches the remote turn-on")
                .orElse(false)) {
            table.fault(
                    "drives_remote", "must be false for a supply that is set by hand: you switch the remote turn-on");
        }
    }

    private static boolean isDialect(String name) {
        return name.endsWith(OWN_DIALECT) || Dialects.SHIPPED.contains(name);
    }

    private static String dialects() {
        return "one of " + String.join(", ", Dialects.SHIPPED) + ", or a file of one (" + OWN_DIALECT + ")";
    }

    private PortSettings port(String terminator) {
        return new PortSettings(
                table.text(
                                "port",
                                "serial port: device or name; or tcp://host:port of a network socket, without a port 5025; \"by hand\""
                                        + " for a supply that has only knobs")
                        .required(),
                table.whole("baud", "bits per second").between(300, 4_000_000).orElse(9600),
                table.whole("data_bits", "data bits").between(7, 8).orElse(8),
                table.choice("parity", "parity bit", Parity.values(), InstrumentReader::word)
                        .orElse(Parity.NONE),
                table.whole("stop_bits", "stop bits").between(1, 2).orElse(1),
                TERMINATORS.getOrDefault(terminator, "\n"));
    }

    private static String word(Parity parity) {
        return switch (parity) {
            case NONE -> "none";
            case EVEN -> "even";
            case ODD -> "odd";
        };
    }

    private Map<Quantity, Accuracy> accuracy() {
        Map<Quantity, Accuracy> found = new EnumMap<>(Quantity.class);
        SheetTable accuracy = table.table("accuracy", "limits of its error, by what it measures");
        for (Quantity quantity : METERED) {
            AccuracyReader.optional(accuracy.table(quantity.word(), "of its " + quantity.word()))
                    .ifPresent(value -> found.put(quantity, value));
        }
        return found;
    }

    static List<Double> band(SheetTable table) {
        List<Double> band = table.numbers("band_Hz", "lowest and highest frequency of a ripple reading")
                .between(0, 1e9)
                .count(2, 2)
                .orElse(List.of());
        if (band.size() == 2 && band.get(0) >= band.get(1)) {
            table.fault("band_Hz", "must be the lowest frequency, then the highest");
        }
        return band;
    }

    private Duty duty(String kind) {
        return switch (kind) {
            case "supply" -> new Duty.AsSupply(supply());
            case "load" -> new Duty.AsLoad(load());
            case "scope" -> new Duty.AsScope(scope());
            default -> new Duty.AsMeter(meter());
        };
    }

    private SupplySetting supply() {
        boolean drives = table.flag("drives_remote", "its second channel or relay switches the remote turn-on")
                .orElse(false);
        return new SupplySetting(
                positive("highest_V", "highest voltage it may be set to"),
                positive("highest_A", "highest current it may be set to"),
                resolution("resolution_V", "steps in which its voltage can be set; a setting may read back so far off"),
                resolution(
                        "resolution_A",
                        "steps in which its current limit can be set; a setting may read back so far off"),
                channel,
                drives,
                table.whole("remote_channel", "channel that switches the remote turn-on")
                        .between(1, 99)
                        .orElse(2),
                table.number("remote_V", "voltage on the remote turn-on line")
                        .between(1, 30)
                        .orElse(12.0),
                table.number("remote_A", "current limit of the remote turn-on line")
                        .between(0.001, 5)
                        .orElse(0.1));
    }

    private OptionalDouble positive(String key, String meaning) {
        return table.number(key, meaning).above(0).optionalNumber();
    }

    private OptionalDouble resolution(String key, String meaning) {
        return table.number(key, meaning).between(0.00001, 1).optionalNumber();
    }

    private LoadSetting load() {
        String rail = rail(table);
        return new LoadSetting(
                rail,
                channels().stream().anyMatch(read -> read.quantity() == Quantity.VOLTAGE),
                channels().contains(new Channel(LoadSetting.nodeBesideMeter(rail), Quantity.VOLTAGE)),
                table.flag("reversed", "its plus terminal is on the return: its voltage gets a minus sign")
                        .orElse(false),
                positive("highest_A", "highest current it may be set to"),
                positive("highest_W", "highest power it can take"),
                resolution("resolution_A", "steps in which its current can be set; a setting may read back so far off"),
                channel);
    }

    static String rail(SheetTable table) {
        return table.text("rail", "the rail it loads, as the design sheet names it")
                .matching("[a-z][a-z0-9-]*", "lower-case letters, digits and hyphens")
                .required();
    }

    private ScopeSetting scope() {
        return new ScopeSetting(
                only(),
                table.number("range", "full height of the picture, V").above(0).orElse(1.0),
                table.number("span_s", "length of the picture")
                        .between(1e-6, 100)
                        .orElse(0.001),
                channel);
    }

    private MeterSetting meter() {
        Channel reads = only();
        Quantity function = table.choice(
                        "function",
                        "what it measures itself; a shunt is read by its voltage",
                        quantities(),
                        Quantity::word)
                .orElse(reads.quantity());
        OptionalDouble shunt = table.number("shunt_ohm", "resistance of the shunt it stands on")
                .between(1e-6, 100)
                .optionalNumber();
        shuntCalibration = Calibration.ofShunt(table);
        shuntTolerancePct = table.number("shunt_tolerance_pct", "limit of the shunt's error")
                .between(0, 20)
                .orElse(0.0);
        OptionalDouble range =
                positive("range", "range in use, in the unit of its function; its own choice if left out");
        OptionalDouble standby = positive("standby_range", "smaller range for the drain of standby");
        OptionalDouble plc = table.number("plc", "integration time in cycles of the mains")
                .between(0.001, 200)
                .optionalNumber();
        try {
            return new MeterSetting(reads, function, range, standby, plc, shunt, mainsHz, channel);
        } catch (IllegalArgumentException e) {
            table.fault("reads", "does not fit: " + e.getMessage());
            Quantity own = reads.quantity();
            return new MeterSetting(reads, own, range, standby, plc, OptionalDouble.empty(), mainsHz, channel);
        }
    }

    private static Quantity[] quantities() {
        return METERED.toArray(new Quantity[0]);
    }

    private List<Channel> channels() {
        return table.texts("reads", "channels it reads, each written node.quantity").orElse(List.of()).stream()
                .map(text -> channel(table, "reads", text))
                .toList();
    }

    private Channel only() {
        List<Channel> channels = channels();
        if (channels.size() == 1 && METERED.contains(channels.get(0).quantity())) {
            return channels.get(0);
        }
        table.fault("reads", "must be one channel, such as \"plus.voltage\", for an instrument of this kind");
        return new Channel("unnamed", Quantity.VOLTAGE);
    }

    static Channel channel(SheetTable table, String key, String text) {
        try {
            return Channel.of(text);
        } catch (IllegalArgumentException e) {
            table.fault(key, "is not a channel: " + e.getMessage());
            return new Channel("unnamed", Quantity.VOLTAGE);
        }
    }

    private List<Channel> reads(Duty duty) {
        if (duty instanceof Duty.AsMeter meter) {
            return List.of(meter.setting().reads());
        }
        if (duty instanceof Duty.AsScope scope) {
            return List.of(scope.setting().reads());
        }
        if (duty instanceof Duty.AsLoad load) {
            return loadReads(load.setting());
        }
        return List.of(new Channel("supply", Quantity.VOLTAGE), new Channel("supply", Quantity.CURRENT));
    }

    private List<Channel> loadReads(LoadSetting load) {
        Channel current = new Channel(load.rail(), Quantity.CURRENT);
        Channel voltage = new Channel(load.node(), Quantity.VOLTAGE);
        for (Channel channel : channels()) {
            if (!channel.equals(current) && !channel.equals(voltage)) {
                table.fault(
                        "reads",
                        "gives " + channel + "; a load on " + load.rail() + " can read " + current + " and "
                                + new Channel(load.rail(), Quantity.VOLTAGE) + ", or beside a meter of that "
                                + new Channel(LoadSetting.nodeBesideMeter(load.rail()), Quantity.VOLTAGE));
            }
        }
        return load.readsVoltage() ? List.of(current, voltage) : List.of(current);
    }
}
