package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.VirtualAgenda;

/**
 * A station on the virtual agenda: each errand is worked out in one go when the instrument is free, and its outcome is
 * due when the exchange would have ended. To be used on the agenda's thread only.
 */
public final class InlineStation<I extends Instrument> implements Station<I> {
    private final I instrument;
    private final VirtualAgenda agenda;
    private final Line line;
    private final Deque<Errand<?>> waiting = new ArrayDeque<>();
    private boolean busy;
    private boolean closed;

    /** @param line closed with the station */
    public InlineStation(I instrument, VirtualAgenda agenda, Line line) {
        this.instrument = instrument;
        this.agenda = agenda;
        this.line = line;
    }

    @Override
    public I instrument() {
        return instrument;
    }

    @Override
    public <T> void ask(Callable<T> errand, Consumer<Outcome<T>> then) {
        waiting.addLast(new Errand<>(errand, then));
        goOn();
    }

    @Override
    public <T> void askFirst(Callable<T> errand, Consumer<Outcome<T>> then) {
        waiting.addFirst(new Errand<>(errand, then));
        goOn();
    }

    private void goOn() {
        if (busy || waiting.isEmpty()) {
            return;
        }
        busy = true;
        Errand<?> errand = waiting.poll();
        if (closed) {
            errand.fail(LineException.closed(line.port(), ""));
            ended(errand);
            return;
        }
        Duration spent = agenda.aside(errand::run);
        agenda.after(spent, () -> ended(errand));
    }

    private void ended(Errand<?> errand) {
        try {
            errand.report();
        } finally {
            busy = false;
            goOn();
        }
    }

    @Override
    public void close() {
        closed = true;
        line.close();
    }
}
