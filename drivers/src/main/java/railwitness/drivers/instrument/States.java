package railwitness.drivers.instrument;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import railwitness.drivers.instrument.Dialect.State;

/**
 * The questions that tell an instrument's state, those of its dialect that it knows. One that it does not answer while it
 * answers the rest is left out after a few rounds: a silence in each of them would make every reading old.
 */
final class States {
    private static final int MOST_SILENCES = 2;

    private final List<State> known = new ArrayList<>();
    private final Map<String, Integer> silences = new TreeMap<>();
    private final Map<String, Boolean> points = new TreeMap<>();
    private final UnaryOperator<String> fill;
    private final Consumer<State> lost;
    private Set<Condition> before = Set.of();

    /** @param lost told of each that is left out */
    States(List<State> states, UnaryOperator<String> fill, Consumer<State> lost) {
        known.addAll(states);
        this.fill = fill;
        this.lost = lost;
    }

    /**
     * Asks each once and leaves out what is not known.
     *
     * @param answered a question that was answered already
     */
    void tryOnce(Trial trial, String answered) {
        for (State state : List.copyOf(known)) {
            if (!fill.apply(state.ask()).equals(answered)
                    && !trial.answers(fill.apply(state.ask()), reply -> isOwn(state, reply))) {
                leaveOut(state);
            }
        }
    }

    /* A number with a point where there never was one is a reading's, even where it is whole. */
    private boolean isOwn(State state, String reply) {
        boolean point = reply.contains(".");
        return StateReply.fits(state, reply) && points.computeIfAbsent(state.ask(), first -> point) == point;
    }

    private void leaveOut(State state) {
        known.remove(state);
        lost.accept(state);
    }

    void add(State state) {
        known.add(state);
    }

    /** Whether any of the questions that are left tells this condition. */
    boolean tell(Condition condition) {
        return known.stream()
                .anyMatch(state ->
                        state.bits().containsKey(condition) || state.words().containsKey(condition));
    }

    /** The conditions now; those known before when an answer is lacking. */
    Set<Condition> ask(PollCycle round) {
        Set<Condition> found = EnumSet.noneOf(Condition.class);
        boolean whole = true;
        for (State state : List.copyOf(known)) {
            if (round.isSilent()) {
                return before;
            }
            whole &= asked(round, state, found);
        }
        before = whole ? found : before;
        return before;
    }

    /** The output is switched: what was known before says nothing of it any more. */
    void forget() {
        before = Set.of();
    }

    private boolean asked(PollCycle round, State state, Set<Condition> found) {
        boolean answered = round.ask(state, fill.apply(state.ask()), reply -> isOwn(state, reply), found);
        int silent = answered ? 0 : silences.getOrDefault(state.ask(), 0) + (round.wasUnanswered() ? 1 : 0);
        silences.put(state.ask(), silent);
        if (silent >= MOST_SILENCES) {
            leaveOut(state);
        }
        return answered;
    }
}
