package railwitness.drivers.instrument;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import railwitness.drivers.instrument.Dialect.Function;
import railwitness.drivers.instrument.Dialect.Level;
import railwitness.drivers.instrument.Dialect.LoadWords;
import railwitness.drivers.instrument.Dialect.MeterWords;
import railwitness.drivers.instrument.Dialect.ScopeWords;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.instrument.Dialect.SupplyWords;
import railwitness.drivers.instrument.Dialect.Switch;
import railwitness.drivers.instrument.Dialect.Watchdog;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.SheetTable;
import railwitness.drivers.sheet.TextKey;

/** Reads a dialect from its sheet. */
final class DialectReader {
    private static final Map<String, String> TERMINATORS = Map.of("LF", "\n", "CR", "\r", "CR LF", "\r\n");

    private DialectReader() {}

    static Dialect read(String name, SheetTable root) {
        SheetTable common = root.table("common", "what all instruments of this dialect share");
        return new Dialect(
                name,
                root.text("about", "what it is for").required(),
                pattern(root),
                TERMINATORS.get(root.text("terminator", "what ends a message")
                        .oneOf("LF", "CR", "CR LF")
                        .orElse("LF")),
                common.texts("remote", "sent before anything else").orElse(List.of()),
                common.texts("reset", "sent once the identity is right").orElse(List.of()),
                common.text("error", "asks for the next error; left out where there is no error queue")
                        .orElse(""),
                meter(root.table("meter", "a meter's messages")),
                supply(root.table("supply", "a supply's messages")),
                load(root.table("load", "a load's messages")),
                scope(root.table("scope", "a scope's messages")));
    }

    private static Pattern pattern(SheetTable root) {
        String regex = root.text("identity", "regular expression over the answer to *IDN?")
                .required();
        try {
            return Pattern.compile(regex, Pattern.DOTALL);
        } catch (PatternSyntaxException e) {
            root.fault("identity", "is no regular expression: " + e.getDescription());
            return Pattern.compile(".*");
        }
    }

    private static Optional<MeterWords> meter(SheetTable table) {
        if (!table.present()) {
            return Optional.empty();
        }
        Map<Quantity, Function> functions = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            SheetTable function = table.table(quantity.word(), "the function that reads " + quantity.word());
            if (function.present()) {
                functions.put(
                        quantity,
                        new Function(
                                function.texts("set_up", "sets the function up").required(),
                                message(function, "range", "changes its range").optional()));
            }
        }
        return Optional.of(
                new MeterWords(message(table, "read", "asks for a reading").required(), form(table), functions));
    }

    private static ReplyForm form(SheetTable table) {
        boolean comma = table.flag("decimal_comma", "whether a comma stands where the standard has a point")
                .orElse(false);
        Optional<Integer> part = table.whole("part", "which number of a reply of several is the reading, from 1")
                .between(1, 9)
                .optional();
        return new ReplyForm(part.map(OptionalInt::of).orElse(OptionalInt.empty()), comma);
    }

    private static Optional<SupplyWords> supply(SheetTable table) {
        if (!table.present()) {
            return Optional.empty();
        }
        return Optional.of(new SupplyWords(
                message(table, "select", "chooses the channel").optional(),
                level(table, "volts"),
                level(table, "amps"),
                optionalLevel(table, "over_volts"),
                optionalLevel(table, "over_amps"),
                message(table, "on", "output on").required(),
                message(table, "off", "output off").required(),
                message(table, "is_on", "asks whether the output is on").required(),
                message(table, "read_volts", "asks for the measured voltage").required(),
                message(table, "read_amps", "asks for the measured current").required(),
                message(table, "remote_on", "remote turn-on line on, in one message")
                        .optional(),
                message(table, "remote_off", "remote turn-on line off, in one message")
                        .optional(),
                watchdog(table.table("watchdog", "switches the output off when nothing is asked for some seconds")),
                states(table)));
    }

    private static Optional<Watchdog> watchdog(SheetTable table) {
        return table.present()
                ? Optional.of(new Watchdog(
                        message(table, "on", "begins it, with {seconds}").required(),
                        message(table, "off", "ends it").required()))
                : Optional.empty();
    }

    private static Optional<LoadWords> load(SheetTable table) {
        if (!table.present()) {
            return Optional.empty();
        }
        return Optional.of(new LoadWords(
                message(table, "select", "chooses the channel").optional(),
                level(table, "amps"),
                level(table, "ohms"),
                message(table, "constant_amps", "constant current").required(),
                message(table, "constant_ohms", "constant resistance").required(),
                switchIn(table),
                otherwise(table.table("otherwise", "how the input is switched where the first way is not known")),
                message(table, "read_volts", "asks for the measured voltage").required(),
                message(table, "read_amps", "asks for the measured current").required(),
                states(table)));
    }

    private static Switch switchIn(SheetTable table) {
        return new Switch(
                message(table, "on", "input on").required(),
                message(table, "off", "input off").required(),
                message(table, "is_on", "asks whether the input is on").required());
    }

    private static Optional<Switch> otherwise(SheetTable table) {
        return table.present() ? Optional.of(switchIn(table)) : Optional.empty();
    }

    private static Optional<ScopeWords> scope(SheetTable table) {
        if (!table.present()) {
            return Optional.empty();
        }
        return Optional.of(new ScopeWords(
                table.texts("set_up", "sets the channel up").required(),
                message(table, "capture", "takes one waveform; answers when done")
                        .required(),
                message(table, "preamble", "asks what the samples mean").required(),
                table.texts("fields", "the preamble's fields in order").required(),
                message(table, "waveform", "asks for the samples").required(),
                table.whole("sample_bytes", "bytes of a sample").between(1, 2).required()));
    }

    private static TextKey message(SheetTable table, String key, String meaning) {
        return table.text(key, meaning);
    }

    private static Level level(SheetTable table, String key) {
        SheetTable level = table.table(key, "a setting and its read-back");
        return levelIn(level);
    }

    private static Optional<Level> optionalLevel(SheetTable table, String key) {
        SheetTable level = table.table(key, "a setting and its read-back");
        return level.present() ? Optional.of(levelIn(level)) : Optional.empty();
    }

    private static Level levelIn(SheetTable level) {
        return new Level(
                message(level, "set", "sets it").required(),
                message(level, "ask", "reads it back").required());
    }

    private static List<State> states(SheetTable table) {
        return table.tables("state", "a question that tells the state").stream()
                .map(DialectReader::state)
                .toList();
    }

    private static State state(SheetTable table) {
        Map<Condition, Integer> bits = new EnumMap<>(Condition.class);
        Map<Condition, List<String>> words = new EnumMap<>(Condition.class);
        SheetTable bitTable = table.table("bits", "sum of the bits that mean a condition");
        SheetTable wordTable = table.table("words", "the answers that mean a condition");
        for (Condition condition : Condition.values()) {
            String key = condition.name().toLowerCase(Locale.ROOT).replace('_', '-');
            bitTable.whole(key, "bits").between(1, 65535).optional().ifPresent(value -> bits.put(condition, value));
            wordTable.texts(key, "answers").optional().ifPresent(value -> words.put(condition, value));
        }
        return new State(table.text("ask", "the question").required(), bits, words);
    }
}
