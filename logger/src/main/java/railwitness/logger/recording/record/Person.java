package railwitness.logger.recording.record;

import java.time.Duration;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.winding.Hookup;

/** The person at the bench, as the run knows them. Answers come back on the scheduler. */
public interface Person {
    /** Asks for one action of the hand; {@code done} when they say it is done. */
    void act(String sentence, Runnable done);

    /** Asks for a number read by eye; empty when they have none. */
    void read(String sentence, Consumer<OptionalDouble> value);

    /**
     * The output is not known to be off. Asks for the hand disconnect until {@link #forget}; the mere press of a key is no
     * answer.
     *
     * @param open told when they say in words that it is open
     */
    void disconnect(String sentence, Runnable open);

    /**
     * One turn at a supply that has only knobs.
     *
     * @param shown told what its display then shows; empty where it does not show that
     */
    default void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
        read(KnobWords.sentence(turn), shown);
    }

    /**
     * Asks for the output of a supply that has only knobs to be switched off; the mere press of a key is no answer.
     *
     * @param isOff told when they say in words that it is off
     */
    default void switchOff(String sentence, Runnable isOff) {
        disconnect(sentence, isOff);
    }

    /** Only their hand can switch off, and must now: said large and loud. From any thread; never waits, never throws. */
    default void offNow() {
        // what happens is shown as an alarm
    }

    /** One connection at a transformer that lies alone on the bench; {@code node} is the place of the meter that is moved. */
    default void connect(Hookup hookup, String node, String sentence, Runnable done) {
        act(sentence, done);
    }

    /** The transformer goes into the unit, and all leads where the bench sheet has them. */
    default void fit(String sentence, Runnable done) {
        act(sentence, done);
    }

    /** A number that the person's own meter or scope shows at a connection. */
    default void readThere(Channel channel, String sentence, Consumer<OptionalDouble> value) {
        read(sentence, value);
    }

    /** Nothing that was asked before is wanted any more. */
    void forget();

    /** How long they may take where the plan says so long: a rehearsal's clock may run faster than theirs. */
    default Duration patience(Duration planned) {
        return planned;
    }

    /** The unit's remote turn-on line, where no supply drives it. */
    default void switchRemote(boolean on, Runnable done) {
        act("Switch the unit's remote turn-on " + (on ? "ON" : "OFF"), done);
    }

    /**
     * The load bank of a rail: so many ohm, or 0 for nothing.
     *
     * @param switched told what is switched in, ohm: as asked for, or what the person says instead
     */
    default void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        if (ohms == 0) {
            act("Switch the load bank of the " + rail + " rail to nothing (open)", () -> switched.accept(0));
        } else {
            read(
                    loadSentence(rail, ohms) + "; if it is another one, type its resistance in ohm",
                    typed -> takeLoad(rail, ohms, typed, switched));
        }
    }

    /** Takes what was typed for a load; a resistance that cannot be is asked again. */
    private void takeLoad(String rail, double ohms, OptionalDouble typed, DoubleConsumer switched) {
        if (typed.orElse(ohms) > 0) {
            switched.accept(typed.orElse(ohms));
        } else {
            switchLoad(rail, ohms, switched);
        }
    }

    /** What is asked at the knobs. */
    static String turnSentence(KnobTurn turn) {
        return KnobWords.sentence(turn);
    }

    /** What is asked for. */
    static String loadSentence(String rail, double ohms) {
        return "Switch the load bank of the " + rail + " rail to " + String.format(Locale.ROOT, "%.4g ohm", ohms);
    }

    /**
     * A meter without a wire.
     *
     * @param value told in the unit of its channel
     */
    default void read(HandRead meter, Consumer<OptionalDouble> value) {
        read(readSentence(meter), shown -> value.accept(ofChannel(meter, shown)));
    }

    /** What a meter shows, in the unit of its channel: a shunt taken into account. */
    static OptionalDouble ofChannel(HandRead meter, OptionalDouble shown) {
        return shown.isPresent() ? OptionalDouble.of(shown.getAsDouble() / meter.perUnit()) : shown;
    }

    /**
     * The same meter once more, because what was read of it cannot well be.
     *
     * @param doubt what is odd about it, without a full stop
     */
    default void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
        read(doubt + ". " + readSentence(meter), shown -> value.accept(ofChannel(meter, shown)));
    }

    /** What is asked of whoever reads it. */
    static String readSentence(HandRead meter) {
        String what = meter.shuntOhms().isPresent()
                ? "the volts across the shunt (mV behind the number where it shows them) for " + meter.reads()
                : meter.reads() + " in " + meter.reads().quantity().unit();
        boolean alternating = meter.reads().quantity() == Quantity.RIPPLE;
        return meter.moved()
                .map(moved -> "Put the leads of " + moved + " to " + meter.name() + (alternating ? ", AC" : ", DC")
                        + ", and type " + what)
                .orElseGet(() -> "Read " + meter.name() + ": " + what);
    }
}
