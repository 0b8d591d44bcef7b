package railwitness.logger.record;

import java.time.Duration;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Outcome;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.Agenda;

/** Asks every station for its readings, round after round, each at its own pace and never two rounds at once. */
final class Polling {
    private final Agenda agenda;
    private final Supplier<Duration> interval;
    private final Runnable first;
    private final Consumer<Sweep> swept;
    private final Consumer<LineException> failed;
    private boolean going;

    /**
     * @param interval from one round to the next of the same instrument; a slower one goes as fast as it can
     * @param first done before each question
     * @param failed told when a whole round could not be asked
     */
    Polling(
            Agenda agenda,
            Supplier<Duration> interval,
            Runnable first,
            Consumer<Sweep> swept,
            Consumer<LineException> failed) {
        this.agenda = agenda;
        this.interval = interval;
        this.first = first;
        this.swept = swept;
        this.failed = failed;
    }

    void start(List<? extends Station<? extends Instrument>> stations) {
        going = true;
        stations.forEach(this::round);
    }

    void stop() {
        going = false;
    }

    private void round(Station<? extends Instrument> station) {
        if (!going) {
            return;
        }
        first.run();
        long begun = agenda.nowNanos();
        station.ask(() -> station.instrument().poll(), (Outcome<Sweep> outcome) -> {
            if (going) {
                agenda.at(begun + interval.get().toNanos(), () -> round(station));
                outcome.either(swept, failed);
            }
        });
    }
}
