package railwitness.drivers.instrument;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.SwitchState;

/** What all instruments share: a dialogue, an identity, a dialect. */
abstract class ScpiInstrument implements Instrument {
    /** A stranger behind the own port is left alone for so many rounds. */
    private static final int LEAVE_ALONE = 2;

    private final Dialogue dialogue;
    private final Identity identity;
    private final Dialect dialect;
    private final String terminator;
    private boolean gone;
    private int passOver;
    private final List<String> lacks = new CopyOnWriteArrayList<>();

    ScpiInstrument(Dialogue dialogue, Identity identity, Dialect dialect, String terminator) {
        this.dialogue = dialogue;
        this.identity = identity;
        this.dialect = dialect;
        this.terminator = terminator;
    }

    @Override
    public final String name() {
        return dialogue.instrument();
    }

    @Override
    public final Identity identity() {
        return identity;
    }

    @Override
    public final boolean cutIn(byte[] bytes) {
        return dialogue.cutIn(bytes);
    }

    @Override
    public final void reconnect() {
        try {
            String answer = dialogue.reopen();
            if (isItself(answer)) {
                return;
            }
            dialogue.letGo();
            if (!foundElsewhere()) {
                throw new LineException(
                        Trouble.WRONG_INSTRUMENT,
                        name() + " on " + dialogue.port() + ": another instrument answers there now: " + answer,
                        "*IDN?",
                        answer);
            }
        } catch (LineException gone) {
            if (gone.trouble() == Trouble.WRONG_INSTRUMENT || !foundElsewhere()) {
                throw gone;
            }
        }
    }

    private boolean isItself(String answer) {
        return Identity.of(answer).equals(identity);
    }

    /** An adapter that is plugged in again may get another name; only a serial number tells who came back. */
    private boolean foundElsewhere() {
        return !identity.serial().equals("0")
                && dialogue.elsewhere().stream().anyMatch(port -> dialogue.foundAt(port, this::isItself));
    }

    /** Set before a round: what went is looked for where it may have come back. */
    final boolean isThere() {
        if (!gone) {
            return true;
        }
        if (passOver > 0) {
            passOver--;
            return false;
        }
        try {
            reconnect();
            backAgain();
            gone = false;
            return true;
        } catch (LineException stillGone) {
            passOver = stillGone.trouble() == Trouble.WRONG_INSTRUMENT ? LEAVE_ALONE : 0;
            return false;
        }
    }

    /** After a round in which the port was found gone, or not. */
    final void went(boolean away) {
        gone = away;
    }

    /** What must be told to it again once its port is there again; its own thread. */
    void backAgain() {
        dialect.remote().forEach(dialogue::send);
    }

    final Dialogue dialogue() {
        return dialogue;
    }

    final PollCycle round() {
        return new PollCycle(dialogue, dialogue.patience());
    }

    final PollCycle round(Duration deadline) {
        return new PollCycle(dialogue, deadline);
    }

    /** A terminator that ends what may stand half sent, remote mode, then the messages, each terminated. */
    final byte[] urgent(List<String> messages) {
        List<String> all = new ArrayList<>(dialect.remote());
        all.addAll(messages);
        return (terminator + String.join(terminator, all) + terminator).getBytes(StandardCharsets.US_ASCII);
    }

    final boolean saysOn(String question) {
        return on(question, dialogue.ask(question));
    }

    /** Asked once more where no answer comes: for what is no switching off. */
    final boolean saysOnAtLast(String question) {
        return on(question, dialogue.askTwice(question));
    }

    private boolean on(String question, String reply) {
        Optional<SwitchState> state = SwitchState.of(reply);
        if (state.isEmpty()) {
            dialogue.doubt();
            throw LineException.garbled(dialogue.port(), question, reply, "1 or 0")
                    .of(name());
        }
        return state.get() == SwitchState.ON;
    }

    /** What this instrument does not know of its dialect, and what is lost by it, in words. */
    @Override
    public final List<String> lacks() {
        return List.copyOf(lacks);
    }

    final void lacks(String words) {
        lacks.add(words);
    }

    @Override
    public final Duration quickestAnswer() {
        return dialogue.quickestAnswer();
    }

    /** To be called at the beginning of a set-up. */
    final void noteErrorQueue() {
        if (!dialogue.hasErrorQueue() && !dialect.error().isEmpty()) {
            lacks("'" + dialect.error() + "' is not answered: a setting that is refused shows in its read-back only");
        }
    }

    /** Refuses a value that the bench sheet does not allow this instrument, or that makes no sense. */
    final void within(String what, double value, double lowest, double highest) {
        if (!(value >= lowest && value <= highest)) {
            throw new LineException(
                    Trouble.REFUSED,
                    name() + ": " + what + " " + value + " must be " + lowest + " to " + highest
                            + " by the bench sheet",
                    "",
                    "");
        }
    }
}
