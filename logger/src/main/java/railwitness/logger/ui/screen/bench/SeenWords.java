package railwitness.logger.ui.screen.bench;

import java.util.stream.Collectors;
import railwitness.drivers.bench.Seen;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** An instrument that is watched, in words: what it reads, who it is, or why not. */
final class SeenWords {
    private SeenWords() {}

    static Cell value(Seen seen) {
        return Cell.of(
                seen.pollResult()
                        .map(pollResult -> pollResult.readings().stream()
                                .map(reading ->
                                        value(reading, pollResult.readings().size() > 1 ? 2 : 3))
                                .collect(Collectors.joining("  ")))
                        .orElse(""),
                Ink.LIVE);
    }

    private static String value(Reading reading, int places) {
        if (reading instanceof Measured measured) {
            return Numbers.fixed(measured.value(), places) + " "
                    + ChannelNames.unit(measured.channel().quantity());
        }
        return Words.of(reading instanceof Overload ? "bench.overload" : "bench.missing");
    }

    static Cell identity(Seen seen) {
        return switch (seen.state()) {
            case ASKING -> Cell.of(Words.of("watch.asking"), Ink.MUTED);
            case ANSWERS ->
                Cell.of(
                        seen.identity()
                                .map(who -> who.model() + ", " + who.serial())
                                .orElse(""),
                        Ink.MUTED);
            case ABSENT -> Cell.of(why(seen), Ink.FAULT);
        };
    }

    /** Why it does not answer, short; the long form is {@link Seen#why}. */
    private static String why(Seen seen) {
        return seen.trouble()
                .map(trouble -> Words.orElse("watch.why." + trouble, seen.why()))
                .orElse(seen.why());
    }
}
