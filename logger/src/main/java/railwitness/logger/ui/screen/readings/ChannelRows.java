package railwitness.logger.ui.screen.readings;

import java.util.List;
import java.util.Map;
import java.util.Set;
import railwitness.drivers.reading.Channel;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.Words;

/** The channels of a session, with what those that are drawn read in the stretch that is looked at. */
final class ChannelRows {
    private ChannelRows() {}

    static List<Column> columns() {
        return List.of(
                Column.words(Words.of("readings.channel")),
                Column.numbers(Words.of("readings.lowest")),
                Column.numbers(Words.of("readings.mean")),
                Column.numbers(Words.of("readings.highest")),
                Column.numbers(Words.of("readings.count")));
    }

    static List<Row> of(List<Channel> channels, Set<Channel> chosen, Map<Channel, DrawnChannel> drawn) {
        return channels.stream()
                .map(channel -> row(channel, chosen.contains(channel), drawn.get(channel)))
                .toList();
    }

    private static Row row(Channel channel, boolean chosen, DrawnChannel drawn) {
        ChannelWords words = ChannelWords.of(channel);
        if (!chosen || drawn == null) {
            return Row.of(List.of(
                    Cell.of(words.titled(), chosen ? Ink.LIVE : Ink.MUTED),
                    Cell.EMPTY,
                    Cell.EMPTY,
                    Cell.EMPTY,
                    Cell.EMPTY));
        }
        long count = drawn.count();
        return Row.of(List.of(
                Cell.of(words.titled(), Ink.LIVE),
                number(words, count, drawn.lowest()),
                number(words, count, drawn.mean()),
                number(words, count, drawn.highest()),
                Cell.of(Numbers.fixed(count, 0), Ink.MUTED)));
    }

    private static Cell number(ChannelWords words, long count, double value) {
        return count == 0 ? Cell.EMPTY : Cell.ink(Numbers.fixed(value * words.scale(), words.places()));
    }
}
