package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.time.Due;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.winding.Hookup;

/**
 * The person at the bench with a limit to how long is waited for them: power that waits for somebody who has gone would
 * stay on for ever. The limit ends with their answer and with {@link #forget}; an answer that comes after it is not
 * heard. The question for the disconnect has no limit.
 */
final class PatientPerson implements Person {
    private final Scheduler scheduler;
    private final Person person;
    private final Duration longest;
    private final Consumer<String> unanswered;
    private int asked;

    /**
     * @param longest by the plan
     * @param unanswered told once for a question that nobody answered, in words
     */
    PatientPerson(Scheduler scheduler, Person person, Duration longest, Consumer<String> unanswered) {
        this.scheduler = scheduler;
        this.person = person;
        this.longest = longest;
        this.unanswered = unanswered;
    }

    /** One question and the time that is left for it. */
    private final class Waiting {
        private final int round = asked;
        private final Due limit;
        private boolean over;

        Waiting(String what) {
            Duration wait = person.patience(longest);
            limit = scheduler.after(wait, () -> {
                if (ends()) {
                    unanswered.accept("nobody answered within " + words(longest) + ": " + what);
                }
            });
        }

        /** True the first time, while the question is still wanted. */
        boolean ends() {
            boolean first = !over && round == asked;
            over = true;
            limit.cancel();
            return first;
        }
    }

    private Runnable limited(String what, Runnable done) {
        Waiting waiting = new Waiting(what);
        return () -> {
            if (waiting.ends()) {
                done.run();
            }
        };
    }

    private Consumer<OptionalDouble> limited(String what, Consumer<OptionalDouble> value) {
        Waiting waiting = new Waiting(what);
        return found -> {
            if (waiting.ends()) {
                value.accept(found);
            }
        };
    }

    @Override
    public void act(String sentence, Runnable done) {
        person.act(sentence, limited(sentence, done));
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        person.read(sentence, limited(sentence, value));
    }

    @Override
    public void switchRemote(boolean on, Runnable done) {
        person.switchRemote(on, limited("switch the remote turn-on " + (on ? "on" : "off"), done));
    }

    @Override
    public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        Waiting waiting = new Waiting("switch the load bank of the " + rail + " rail");
        person.switchLoad(rail, ohms, taken -> {
            if (waiting.ends()) {
                switched.accept(taken);
            }
        });
    }

    @Override
    public void read(HandRead meter, Consumer<OptionalDouble> value) {
        person.read(meter, limited("read " + meter.name(), value));
    }

    /** Nothing is on meanwhile, and winding takes its time: there is no limit. */
    @Override
    public void connect(Hookup hookup, String node, String sentence, Runnable done) {
        int round = asked;
        person.connect(hookup, node, sentence, () -> {
            if (round == asked) {
                done.run();
            }
        });
    }

    /** As {@link #connect}. */
    @Override
    public void fit(String sentence, Runnable done) {
        int round = asked;
        person.fit(sentence, () -> {
            if (round == asked) {
                done.run();
            }
        });
    }

    @Override
    public void readThere(Channel channel, String sentence, Consumer<OptionalDouble> value) {
        person.readThere(channel, sentence, limited(sentence, value));
    }

    @Override
    public void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
        person.readAgain(meter, doubt, limited("read " + meter.name() + " once more", value));
    }

    @Override
    public void disconnect(String sentence, Runnable open) {
        person.disconnect(sentence, open);
    }

    @Override
    public void forget() {
        asked++;
        person.forget();
    }

    private static String words(Duration time) {
        long seconds = time.toSeconds();
        return seconds >= 120 && seconds % 60 == 0 ? seconds / 60 + " min" : seconds + " s";
    }
}
