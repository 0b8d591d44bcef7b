package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Hand;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.time.Scheduler;

/** The person at the bench as the hand that works the knobs of the supply. */
final class PersonsHand implements Hand {
    private final Scheduler scheduler;
    private final Person person;
    private final Duration longest;
    private final Consumer<String> unanswered;

    /**
     * @param longest time for one turn, as the plan gives it for what is asked under power
     * @param unanswered told when nobody did it within that, in words
     */
    PersonsHand(Scheduler scheduler, Person person, Duration longest, Consumer<String> unanswered) {
        this.scheduler = scheduler;
        this.person = person;
        this.longest = longest;
        this.unanswered = unanswered;
    }

    @Override
    public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
        boolean[] over = {false};
        scheduler.after(person.patience(longest), () -> {
            if (!over[0]) {
                over[0] = true;
                unanswered.accept("nobody answered within " + longest.toSeconds() + " s: " + KnobWords.sentence(turn));
            }
        });
        person.turn(turn, number -> {
            if (!over[0]) {
                over[0] = true;
                shown.accept(number);
            }
        });
    }

    @Override
    public void switchOff(Runnable isOff) {
        person.switchOff(KnobWords.OFF, isOff);
    }

    @Override
    public void offNow() {
        person.offNow();
    }

    @Override
    public void forget() {
        person.forget();
    }
}
