package railwitness.logger.ui.screen.stage;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongSupplier;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * Slow work behind the desk: what is done, how far it is, how long it still takes. It is told how far it is on the
 * thread of the work, and looked at on the event thread.
 */
public final class Work {
    private final String words;
    private final LongSupplier nanos;
    private final long began;
    private volatile OptionalDouble share = OptionalDouble.empty();
    private volatile boolean stopping;

    /** The person has stopped it; the message says so. */
    public static final class Stopped extends RuntimeException {
        Stopped() {
            super(Words.of("work.stopped"));
        }
    }

    /** @param words what is done, such as "Exporting 0412.session" */
    public Work(String words) {
        this(words, System::nanoTime);
    }

    Work(String words, LongSupplier nanos) {
        this.words = words;
        this.nanos = nanos;
        this.began = nanos.getAsLong();
    }

    /**
     * It has come so far; from now on it can be stopped.
     *
     * @param done 0 to 1
     * @throws Stopped when it shall go no further; what was begun is then to be cleared away
     */
    public void at(double done) {
        if (stopping) {
            throw new Stopped();
        }
        share = OptionalDouble.of(Math.max(0, Math.min(1, done)));
    }

    /** Ends it at its next {@link #at}. */
    public void stop() {
        stopping = true;
    }

    /** What stands at the bottom of the window while it goes on. */
    public StatusLine line() {
        Duration taken = Duration.ofNanos(nanos.getAsLong() - began);
        if (stopping) {
            return StatusLine.of(Words.of("work.stopping"), words);
        }
        if (share.isEmpty()) {
            return StatusLine.of(words, taken.toSeconds() == 0 ? "" : Words.of("work.since", Numbers.span(taken)));
        }
        double done = share.getAsDouble();
        Optional<Duration> left = Remaining.of(done, taken);
        String long1 = left.map(time -> Words.of("work.left", Numbers.span(time)))
                .orElse(Words.of(done == 1 ? "work.last" : "work.begun"));
        return StatusLine.of(words, "", new Act("stop", Words.of("act.work.stop"), "control W", false, this::stop))
                .with(new StatusLine.Progress(long1, done));
    }
}
