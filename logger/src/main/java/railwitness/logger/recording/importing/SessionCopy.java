package railwitness.logger.recording.importing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.TimeSpan;

/**
 * Writes what a session holds into a new one, in the order of time, minute by minute. A finished session is never
 * altered: whoever adds something to it makes a new one, which names the old one and its seal.
 */
public final class SessionCopy {
    private static final long MINUTE_NANOS = 60_000_000_000L;

    private record Dated(long nanos, Runnable write) {}

    private final SessionFile from;
    private final SessionWriter to;
    private final List<Dated> records = new ArrayList<>();

    private SessionCopy(SessionFile from, SessionWriter to) {
        this.from = from;
        this.to = to;
    }

    /** Everything but the end; the writer has the head already. */
    public static void of(SessionFile from, SessionWriter to) {
        of(from, to, share -> {});
    }

    /**
     * The same.
     *
     * @param progress told which share of the session's time is copied, 0 to 1; what it throws ends the copying
     */
    static void of(SessionFile from, SessionWriter to, DoubleConsumer progress) {
        new SessionCopy(from, to).all(progress);
    }

    private void all(DoubleConsumer progress) {
        from.sheets().forEach(to::add);
        from.instruments().forEach(to::add);
        from.events().forEach(event -> records.add(new Dated(event.nanos(), () -> to.add(event))));
        from.notes().forEach(note -> records.add(new Dated(note.nanos(), () -> to.add(note))));
        from.exchanges().forEach(exchange -> records.add(new Dated(exchange.nanos(), () -> to.add(exchange))));
        from.waveforms().forEach(waveform -> records.add(new Dated(waveform.nanos(), () -> to.add(waveform))));
        from.steps()
                .forEach(step -> records.add(new Dated(
                        step.average().map(TimeSpan::toNanos).orElse(step.beginNanos()), () -> to.add(step))));
        records.sort(Comparator.comparingLong(Dated::nanos));
        int written = 0;
        long last = from.lastNanos();
        for (long minute = 0; minute <= last; minute += MINUTE_NANOS) {
            progress.accept((double) minute / Math.max(1, last));
            written = minute(minute, written);
        }
        records.subList(written, records.size())
                .forEach(record -> record.write().run());
    }

    private int minute(long begin, int written) {
        int next = written;
        for (Reading reading : readings(new TimeSpan(begin, begin + MINUTE_NANOS))) {
            while (next < records.size() && records.get(next).nanos() < reading.repliedNanos()) {
                records.get(next++).write().run();
            }
            to.reading(reading);
        }
        return next;
    }

    private List<Reading> readings(TimeSpan span) {
        List<Reading> readings = new ArrayList<>();
        Consumer<Reading> keep = readings::add;
        for (Channel channel : from.channels()) {
            from.readings(channel, span, keep);
        }
        readings.sort(Comparator.comparingLong(Reading::repliedNanos));
        return readings;
    }
}
