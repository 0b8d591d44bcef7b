package railwitness.logger.ui.screen.live;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.winding.Hookup;
import railwitness.logger.recording.record.Person;
import railwitness.logger.ui.screen.widgets.Numbers;

/** The person of a rehearsal: asked on the screen as on a real bench; what they say is done is done on the virtual one. */
final class RehearsingHands implements Person {
    private final ScreenPerson person;
    private final VirtualBench bench;
    private final double pace;

    /** @param pace seconds of the session in one second of the person's */
    RehearsingHands(ScreenPerson person, VirtualBench bench, double pace) {
        this.person = person;
        this.bench = bench;
        this.pace = pace;
    }

    @Override
    public Duration patience(Duration planned) {
        return Duration.ofNanos(Math.round(planned.toNanos() * Math.max(1, pace)));
    }

    @Override
    public void connect(Hookup hookup, String node, String sentence, Runnable done) {
        person.connect(hookup, node, sentence, () -> {
            bench.connect(hookup, node);
            done.run();
        });
    }

    @Override
    public void fit(String sentence, Runnable done) {
        person.fit(sentence, () -> {
            bench.fitted();
            done.run();
        });
    }

    @Override
    public void readThere(Channel channel, String sentence, Consumer<OptionalDouble> value) {
        double shown = bench.readByHand(channel);
        person.read(
                sentence + ": it shows " + Numbers.fixed(shown, 4) + " "
                        + channel.quantity().unit(),
                typed -> value.accept(typed.isPresent() ? typed : OptionalDouble.of(shown)));
    }

    /** The virtual display's value is what is taken. */
    @Override
    public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
        person.act(Person.turnSentence(turn), () -> shown.accept(OptionalDouble.of(bench.turnKnob(turn))));
    }

    @Override
    public void switchOff(String sentence, Runnable isOff) {
        person.switchOff(sentence, () -> {
            bench.switchOffByHand();
            isOff.run();
        });
    }

    @Override
    public void offNow() {
        person.offNow();
    }

    @Override
    public void disconnect(String sentence, Runnable open) {
        person.disconnect(sentence, () -> {
            bench.openDisconnect();
            open.run();
        });
    }

    @Override
    public void forget() {
        person.forget();
    }

    @Override
    public void act(String sentence, Runnable done) {
        person.act(sentence, done);
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        person.read(sentence, value);
    }

    @Override
    public void switchRemote(boolean on, Runnable done) {
        person.switchRemote(on, () -> {
            bench.switchRemote(on);
            done.run();
        });
    }

    @Override
    public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        person.switchLoad(rail, ohms, taken -> {
            bench.switchResistor(rail, taken);
            switched.accept(taken);
        });
    }

    /** The virtual meter's value stands in the sentence; a mere Enter takes it. */
    @Override
    public void read(HandRead meter, Consumer<OptionalDouble> value) {
        double shown = bench.readByHand(meter);
        String unit = meter.reads().quantity().unit();
        person.read(
                meter.name() + " shows " + Numbers.fixed(shown, 3) + " " + unit,
                typed -> value.accept(typed.isPresent() ? typed : OptionalDouble.of(shown)));
    }

    @Override
    public void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
        read(meter, value);
    }
}
