package railwitness.logger.ui.screen.bench;

import java.util.List;
import java.util.OptionalDouble;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.record.LeadFinding;
import railwitness.logger.recording.record.LeadFinding.Kind;
import railwitness.logger.recording.record.LeadFinding.Outcome;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/** What was found at the leads, as rows. */
final class LeadRows {
    /** Below this volts are shown in a smaller unit. */
    private static final double MILLI = 1e-3;

    private static final double MICRO = 1e-6;

    private LeadRows() {}

    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("leads.what")),
                Column.numbers(Words.of("leads.seen")),
                Column.numbers(Words.of("leads.allowed")),
                Column.words(Words.of("leads.outcome")));
    }

    static Row of(LeadFinding found) {
        String subject = found.kind() == Kind.ZERO ? found.subject() : ChannelNames.full(Channel.of(found.subject()));
        double scale = scale(found.allowed().orElse(Math.abs(found.seen())));
        return Row.of(List.of(
                Cell.ink(Words.of("leads.row." + found.kind(), subject)),
                Cell.of(volts(found.seen(), scale), Ink.LIVE),
                Cell.of(allowed(found, scale), Ink.MUTED),
                Cell.of(
                        Words.of("leads." + found.outcome() + "." + found.kind()),
                        found.outcome() == Outcome.BEYOND ? Ink.FAULT : Ink.MUTED)));
    }

    /** One that was left out, or of which nothing came. */
    static Row without(String subject, String why) {
        return Row.of(List.of(Cell.ink(subject), Cell.EMPTY, Cell.EMPTY, Cell.of(Words.of(why), Ink.MUTED)));
    }

    private static String allowed(LeadFinding found, double scale) {
        OptionalDouble allowed = found.allowed();
        if (allowed.isEmpty()) {
            return "";
        }
        String within = "\u00b1" + volts(allowed.getAsDouble(), scale);
        return found.against().isPresent() ? volts(found.against().getAsDouble(), scale) + " " + within : within;
    }

    private static double scale(double volts) {
        return volts < MILLI ? MICRO : volts < 1 ? MILLI : 1;
    }

    private static String volts(double value, double scale) {
        String unit = scale == MICRO ? "\u00b5V" : scale == MILLI ? "mV" : "V";
        return Numbers.fixed(value / scale, 2) + " " + unit;
    }
}
