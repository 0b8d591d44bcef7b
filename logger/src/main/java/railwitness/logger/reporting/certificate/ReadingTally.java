package railwitness.logger.reporting.certificate;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.TimeSpan;

/**
 * How many readings there are, and how far the rails stood apart; from summaries, so that a long session takes no longer.
 *
 * @param readings of all channels
 * @param lost those of a channel that did not come or were out of range; channels without any left out
 * @param between the rails, at the most; empty where no rail was read
 */
record ReadingTally(long readings, Map<Channel, Long> lost, Optional<Standing> between) {
    private static final double COLUMN_SECONDS = 4;
    private static final int MOST_COLUMNS = 400;

    /**
     * The highest voltage that stood between two rails, or between one and 0 V.
     *
     * @param volts highest of the one less lowest of the other within one short stretch, V: never less than what stood
     * @param seconds middle of that stretch on the session's axis
     */
    record Standing(double volts, double seconds) {}

    /** @param rails their names, in the sheet's order */
    static ReadingTally of(SessionFile file, List<String> rails) {
        double seconds = Math.max(1, file.lastNanos() / 1e9);
        int columns = (int) Math.max(1, Math.min(MOST_COLUMNS, Math.round(seconds / COLUMN_SECONDS)));
        long readings = 0;
        Map<Channel, Long> lost = new LinkedHashMap<>();
        Extremes extremes = new Extremes();
        for (Channel channel : file.channels()) {
            Envelope envelope = file.envelope(channel, TimeSpan.ALL, columns);
            long all = sum(envelope.readings());
            long measured = sum(envelope.measured());
            readings += all;
            if (all > measured) {
                lost.put(channel, all - measured);
            }
            if (channel.quantity() == Quantity.VOLTAGE && rails.contains(channel.node())) {
                extremes.add(envelope);
            }
        }
        return new ReadingTally(readings, lost, extremes.widest());
    }

    private static long sum(long[] counts) {
        long sum = 0;
        for (long count : counts) {
            sum += count;
        }
        return sum;
    }

    /** Highest and lowest of all rails and of 0 V, column by column. */
    private static final class Extremes {
        private double[] highest = new double[0];
        private double[] lowest = new double[0];
        private long[] edges = new long[0];

        void add(Envelope envelope) {
            if (edges.length == 0) {
                edges = envelope.edgeNanos();
                highest = new double[envelope.columns()];
                lowest = new double[envelope.columns()];
            }
            for (int i = 0; i < Math.min(highest.length, envelope.columns()); i++) {
                if (envelope.measured()[i] > 0) {
                    highest[i] = Math.max(highest[i], envelope.highest()[i]);
                    lowest[i] = Math.min(lowest[i], envelope.lowest()[i]);
                }
            }
        }

        Optional<Standing> widest() {
            Optional<Standing> widest = Optional.empty();
            for (int i = 0; i < highest.length; i++) {
                double volts = highest[i] - lowest[i];
                if (widest.isEmpty() || volts > widest.get().volts()) {
                    widest = Optional.of(new Standing(volts, (edges[i] + edges[i + 1]) / 2e9));
                }
            }
            return widest;
        }
    }
}
