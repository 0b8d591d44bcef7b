package railwitness.drivers.bench;

import java.util.Optional;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Accuracy.StatedAs;
import railwitness.drivers.sheet.SheetTable;

/** Reads the limits of an instrument's error. */
final class AccuracyReader {
    private AccuracyReader() {}

    static Optional<Accuracy> optional(SheetTable table) {
        Accuracy accuracy = new Accuracy(
                part(table, "reading_pct", "percent of the reading", 100),
                part(table, "range_pct", "percent of the range", 100),
                part(table, "digits", "counts of the last digit", 1e6),
                part(table, "resolution", "worth of one digit, in the instrument's unit", 1e6),
                part(table, "offset", "fixed part, in the instrument's unit", 1e6),
                part(table, "reading_pct_per_degC", "added for each degree outside 18 to 28 degC", 10),
                part(table, "range_pct_per_degC", "the same, percent of the range", 10),
                table.choice("stated_as", "limit never passed, or 95 % expanded", StatedAs.values(), StatedAs::word)
                        .orElse(StatedAs.LIMIT));
        return table.present() ? Optional.of(accuracy) : Optional.empty();
    }

    private static double part(SheetTable table, String key, String meaning, double highest) {
        return table.number(key, meaning).between(0, highest).orElse(0.0);
    }
}
