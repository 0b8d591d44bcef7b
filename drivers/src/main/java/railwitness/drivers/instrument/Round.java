package railwitness.drivers.instrument;

import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
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
final class Round {
    /** No bench instrument reads beyond this; a spoilt exponent can. */
    private static final double IMPLAUSIBLE = 1e9;

    private final Dialogue dialogue;
    private final Duration deadline;
    private String silent = "";

    Round(Dialogue dialogue, Duration deadline) {
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

    private static Reading taken(
            Channel channel, String reply, DoubleUnaryOperator scale, long requested, long replied) {
        try {
            Numeric numeric = Numeric.of(reply);
            if (numeric instanceof Numeric.Infinite) {
                return new Overload(channel, requested, replied);
            }
            if (numeric instanceof Numeric.Value value && Math.abs(value.value()) < IMPLAUSIBLE) {
                return new Measured(channel, scale.applyAsDouble(value.value()), requested, replied);
            }
            String why = numeric instanceof Numeric.Nothing ? "the instrument has no number" : "implausible: " + reply;
            return new Missing(channel, why, requested, replied);
        } catch (IllegalArgumentException e) {
            return new Missing(channel, e.getMessage(), requested, replied);
        }
    }

    private String fallSilent(LineException e) {
        String reason =
                switch (e.trouble()) {
                    case NO_ANSWER -> "no answer in " + deadline.toMillis() / 1000.0 + " s";
                    case UNPLUGGED -> "unplugged";
                    case CUT_SHORT -> "something more urgent was sent";
                    default -> e.getMessage();
                };
        if (e.trouble() != Trouble.GARBLED) {
            silent = reason;
        }
        return reason;
    }

    /** The conditions the states tell; those known before when an answer is lacking. */
    Set<Condition> conditions(List<State> states, UnaryOperator<String> fill, Set<Condition> before) {
        Set<Condition> found = EnumSet.noneOf(Condition.class);
        for (State state : states) {
            if (!silent.isEmpty() || !ask(state, fill.apply(state.ask()), found)) {
                return before;
            }
        }
        return found;
    }

    private boolean ask(State state, String question, Set<Condition> found) {
        try {
            String reply = dialogue.poll(question, deadline).strip();
            for (Map.Entry<Condition, List<String>> entry : state.words().entrySet()) {
                if (entry.getValue().stream().anyMatch(reply.replace("\"", "")::equalsIgnoreCase)) {
                    found.add(entry.getKey());
                }
            }
            return state.bits().isEmpty() || addBits(state, reply, found);
        } catch (LineException e) {
            fallSilent(e);
            return false;
        }
    }

    private static boolean addBits(State state, String reply, Set<Condition> found) {
        try {
            if (!(Numeric.of(reply) instanceof Numeric.Value register)) {
                return false;
            }
            state.bits().forEach((condition, bits) -> {
                if (((int) register.value() & bits) != 0) {
                    found.add(condition);
                }
            });
            return true;
        } catch (IllegalArgumentException notANumber) {
            return false;
        }
    }
}
