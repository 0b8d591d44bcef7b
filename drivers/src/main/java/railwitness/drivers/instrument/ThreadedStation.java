package railwitness.drivers.instrument;

import java.util.concurrent.BlockingDeque;
import java.util.concurrent.Callable;
import java.util.concurrent.LinkedBlockingDeque;
import java.util.function.Consumer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Agenda;

/** A station with a thread of its own; outcomes are posted to the agenda. */
public final class ThreadedStation<I extends Instrument> implements Station<I> {
    private static final long LONGEST_CLOSING_MILLIS = 5000;

    private final I instrument;
    private final Agenda agenda;
    private final Line line;
    private final BlockingDeque<Errand<?>> waiting = new LinkedBlockingDeque<>();
    private final Errand<Void> end = new Errand<>(() -> null, nothing -> {});
    private final Thread worker;
    private volatile boolean closed;

    /** @param line closed with the station */
    public ThreadedStation(I instrument, Agenda agenda, Line line) {
        this.instrument = instrument;
        this.agenda = agenda;
        this.line = line;
        worker = new Thread(this::work, "station " + instrument.name());
        worker.setDaemon(true);
        worker.start();
    }

    @Override
    public I instrument() {
        return instrument;
    }

    @Override
    public <T> void ask(Callable<T> errand, Consumer<Outcome<T>> then) {
        take(new Errand<>(errand, then), false);
    }

    @Override
    public <T> void askFirst(Callable<T> errand, Consumer<Outcome<T>> then) {
        take(new Errand<>(errand, then), true);
    }

    private void take(Errand<?> errand, boolean first) {
        if (closed) {
            errand.fail(LineException.closed(line.port(), ""));
            agenda.post(errand::report);
        } else if (first) {
            waiting.addFirst(errand);
        } else {
            waiting.addLast(errand);
        }
    }

    private void work() {
        try {
            for (Errand<?> next = waiting.take(); next != end; next = waiting.take()) {
                Errand<?> errand = next;
                if (closed) {
                    errand.fail(LineException.closed(line.port(), ""));
                } else {
                    errand.run();
                }
                agenda.post(errand::report);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Errands not begun fail; the one under way ends by its own deadline first, within 5 s. */
    @Override
    public void close() {
        closed = true;
        waiting.addLast(end);
        try {
            worker.join(LONGEST_CLOSING_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        line.close();
    }
}
