package railwitness.logger.record;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import railwitness.drivers.time.Agenda;

/** The person of a rehearsal: does what is asked after a moment, and reads no meters. */
public final class RehearsalPerson implements Person {
    private static final Duration MOMENT = Duration.ofSeconds(2);

    private final Agenda agenda;

    public RehearsalPerson(Agenda agenda) {
        this.agenda = agenda;
    }

    @Override
    public void act(String sentence, Runnable done) {
        agenda.after(MOMENT, done);
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        agenda.after(MOMENT, () -> value.accept(OptionalDouble.empty()));
    }
}
