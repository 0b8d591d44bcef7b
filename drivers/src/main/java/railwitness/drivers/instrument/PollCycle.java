package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
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
    private boolean unanswered;
    private boolean outOfStep;
    private boolean unplugged;

    PollCycle(Dialogue dialogue, Duration deadline) {
        this.dialogue = dialogue;
        this.deadline = deadline;
    }

    Reading reading(Channel channel, String question, DoubleUnaryOperator scale) {
        return reading(channel, question, ReplyForm.standard(), scale);
    }

    Reading reading(Channel channel, String question, ReplyForm form, DoubleUnaryOperator scale) {
        long requested = dialogue.nowNanos();
        if (!silent.isEmpty()) {
            return new Missing(channel, silent, requested, requested);
        }
        try {
            String reply = dialogue.poll(question, deadline);
            return taken(channel, reply, form, scale, requested, dialogue.nowNanos());
        } catch (LineException e) {
            return new Missing(channel, fallSilent(e), requested, dialogue.nowNanos());
        }
    }

    /* A reply that cannot be a reading of this channel may belong to another question. */
    private Reading taken(
            Channel channel, String reply, ReplyForm form, DoubleUnaryOperator scale, long requested, long replied) {
        try {
            Numeric numeric = Numeric.of(form.number(reply));
            if (numeric instanceof Numeric.Infinite) {
                return new Overload(channel, requested, replied);
            }
            if (numeric instanceof Numeric.Value value && Plausible.is(channel, scale.applyAsDouble(value.value()))) {
                return new Measured(channel, scale.applyAsDouble(value.value()), requested, replied);
            }
            if (numeric instanceof Numeric.Nothing) {
                return new Missing(channel, "the instrument has no number", requested, replied);
            }
            doubt();
            return new Missing(channel, "implausible: " + reply, requested, replied);
        } catch (IllegalArgumentException e) {
            doubt();
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
        doubt();
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

    private void doubt() {
        outOfStep = true;
        dialogue.doubt();
    }

    /**
     * The readings of the round once all of it was heard. Where one reply could not belong to its question, the others may
     * be one question late, however likely they look: none of them counts.
     */
    List<Reading> inStep(List<Reading> readings) {
        return outOfStep ? readings.stream().map(PollCycle::outOfStep).toList() : readings;
    }

    private static Reading outOfStep(Reading reading) {
        return reading instanceof Missing
                ? reading
                : new Missing(
                        reading.channel(),
                        "the replies of this round do not fit their questions",
                        reading.requestedNanos(),
                        reading.repliedNanos());
    }

    /** True when a question for a state was heard in silence. */
    boolean wasUnanswered() {
        return unanswered;
    }

    /** Adds the conditions this state tells; false when no answer came, or one that cannot be its own. */
    boolean ask(State state, String question, Predicate<String> own, Set<Condition> found) {
        try {
            String reply = dialogue.poll(question, deadline).strip();
            boolean fits = own.test(reply);
            if (fits) {
                found.addAll(StateReply.conditions(state, reply));
            } else {
                doubt();
            }
            return fits;
        } catch (LineException e) {
            unanswered = e.trouble() == Trouble.NO_ANSWER;
            fallSilent(e);
            return false;
        }
    }
}
