package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.Scheduler;
import railwitness.drivers.winding.Hookup;

/** The person of a rehearsal: does on the virtual bench what is asked, after a moment. */
public final class RehearsalPerson implements Person {
    private static final Duration MOMENT = Duration.ofSeconds(2);
    private static final Duration WALK = Duration.ofSeconds(20);

    /** From being told to the hand that moves; drawn anew each time (common practice, no source). */
    private static final double LEAST_SECONDS = 1;

    private static final double MORE_SECONDS = 3;
    private final Scheduler scheduler;
    private final VirtualBench bench;
    private final Random moments;
    private int asked;

    public RehearsalPerson(Scheduler scheduler, VirtualBench bench) {
        this.scheduler = scheduler;
        this.bench = bench;
        this.moments = new Random(bench.instruments().size());
    }

    private Duration reaction() {
        return Duration.ofMillis(Math.round(1e3 * (LEAST_SECONDS + MORE_SECONDS * moments.nextDouble())));
    }

    /** What was begun is left when somebody shouts: nobody switches on then. */
    @Override
    public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
        int mine = asked;
        scheduler.after(reaction(), () -> {
            if (mine == asked) {
                shown.accept(OptionalDouble.of(bench.turnKnob(turn)));
            }
        });
    }

    @Override
    public void switchOff(String sentence, Runnable isOff) {
        scheduler.after(reaction(), () -> {
            bench.switchOffByHand();
            isOff.run();
        });
    }

    @Override
    public void act(String sentence, Runnable done) {
        scheduler.after(MOMENT, done);
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        scheduler.after(MOMENT, () -> value.accept(OptionalDouble.empty()));
    }

    @Override
    public void connect(Hookup hookup, String node, String sentence, Runnable done) {
        scheduler.after(MOMENT, () -> {
            bench.connect(hookup, node);
            done.run();
        });
    }

    @Override
    public void fit(String sentence, Runnable done) {
        scheduler.after(WALK, () -> {
            bench.fitted();
            done.run();
        });
    }

    @Override
    public void readThere(Channel channel, String sentence, Consumer<OptionalDouble> value) {
        scheduler.after(MOMENT, () -> value.accept(OptionalDouble.of(bench.readByHand(channel))));
    }

    @Override
    public void disconnect(String sentence, Runnable open) {
        scheduler.after(WALK, () -> {
            bench.openDisconnect();
            open.run();
        });
    }

    @Override
    public void forget() {
        asked++; // of all else what is under way is done all the same
    }

    @Override
    public void switchRemote(boolean on, Runnable done) {
        scheduler.after(MOMENT, () -> {
            bench.switchRemote(on);
            done.run();
        });
    }

    @Override
    public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        scheduler.after(MOMENT, () -> {
            bench.switchResistor(rail, ohms);
            switched.accept(ohms);
        });
    }

    @Override
    public void read(HandRead meter, Consumer<OptionalDouble> value) {
        scheduler.after(MOMENT, () -> value.accept(OptionalDouble.of(bench.readByHand(meter))));
    }

    @Override
    public void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
        read(meter, value);
    }
}
