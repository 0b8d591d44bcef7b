package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import railwitness.drivers.instrument.Dialect.State;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.Numeric;

/**
 * The questions of one round to one instrument. Once it has fallen silent the rest of the round is not asked, so that a
 * silent instrument costs one deadline.
 */
final class PollCycle {
    /** Why a reading is missing whose port has gone. */
    static final String UNPLUGGED = Missing.UNPLUGGED;

    private final Dialogue dialogue;
    private final Duration deadline;
    private String silent = "";
    private boolean unplugged;
    private boolean unfit;

    PollCycle(Dialogue dialogue, Duration deadline) {
        this.dialogue = dialogue;
        this.deadline = deadline;
    }

    Reading reading(Channel channel, String question, DoubleUnaryOperator scale) {
        long requested = dialogue.nowNanos();
        if (!silent.isEmpty()) {
            return new Missing(channel, silent, requested, requested);
        }
        try {
            String reply = dialogue.poll(question, deadline);
            return taken(channel, reply, scale, requested, dialogue.nowNanos());
        } catch (LineException e) {
            return new Missing(channel, fallSilent(e), requested, dialogue.nowNanos());
        }
    }

    /* A reply that cannot be a reading of this channel may belong to another question. */
    private Reading taken(Channel channel, String reply, DoubleUnaryOperator scale, long requested, long replied) {
        try {
            Numeric numeric = Numeric.of(reply);
            if (numeric instanceof Numeric.Infinite) {
                return new Overload(channel, requested, replied);
            }
            if (numeric instanceof Numeric.Value value && Plausible.is(channel, scale.applyAsDouble(value.value()))) {
                return new Measured(channel, scale.applyAsDouble(value.value()), requested, replied);
            }
            if (numeric instanceof Numeric.Nothing) {
                return new Missing(channel, "the instrument has no number", requested, replied);
            }
            dialogue.doubt();
            return new Missing(channel, "implausible: " + reply, requested, replied);
        } catch (IllegalArgumentException e) {
            dialogue.doubt();
            return new Missing(channel, e.getMessage(), requested, replied);
        }
    }

    private String fallSilent(LineException e) {
        String reason =
                switch (e.trouble()) {
                    case NO_ANSWER -> "no answer in " + deadline.toMillis() / 1000.0 + " s";
                    case UNPLUGGED -> UNPLUGGED;
                    case CUT_SHORT -> "something more urgent was sent";
                    default -> e.getMessage();
                };
        unplugged |= e.trouble() == Trouble.UNPLUGGED;
        if (e.trouble() != Trouble.GARBLED) {
            silent = reason;
        }
        return reason;
    }

    /** A number that is no reading; empty when none came. */
    OptionalDouble number(String question) {
        if (!silent.isEmpty()) {
            return OptionalDouble.empty();
        }
        try {
            if (Numeric.of(dialogue.poll(question, deadline)) instanceof Numeric.Value number) {
                return OptionalDouble.of(number.value());
            }
        } catch (LineException e) {
            fallSilent(e);
            return OptionalDouble.empty();
        } catch (IllegalArgumentException notANumber) {
            // like what is no value
        }
        dialogue.doubt();
        return OptionalDouble.empty();
    }

    /** True once the port was found gone. */
    boolean isUnplugged() {
        return unplugged;
    }

    /** Nothing of this round is asked: the port has gone. */
    PollCycle away() {
        unplugged = true;
        silent = UNPLUGGED;
        return this;
    }

    /** True once a question of this round was not answered. */
    boolean isSilent() {
        return !silent.isEmpty();
    }

    /** True when the last question for a state was heard in silence or answered by what cannot be its answer. */
    boolean wasUnfit() {
        return unfit;
    }

    /** Adds the conditions this state tells; false when no answer came, or one that cannot be its own. */
    boolean ask(State state, String question, Set<Condition> found) {
        try {
            String reply = dialogue.poll(question, deadline).strip();
            boolean fits = StateReply.fits(state, reply);
            unfit = !fits;
            if (fits) {
                found.addAll(StateReply.conditions(state, reply));
            } else {
                dialogue.doubt();
            }
            return fits;
        } catch (LineException e) {
            unfit = e.trouble() == Trouble.NO_ANSWER;
            fallSilent(e);
            return false;
        }
    }
}
