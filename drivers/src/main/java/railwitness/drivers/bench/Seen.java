package railwitness.drivers.bench;

import java.util.Optional;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.line.LineException.Trouble;

/**
 * What is known of one instrument while a bench is watched.
 *
 * @param identity who it is, as it says itself; empty until it has answered
 * @param sweep what it read last; empty until it has answered
 * @param trouble of which kind its silence is; empty where it answers, or where the reason is no trouble of the line
 * @param why it does not answer, in words; empty where it does
 */
public record Seen(
        String instrument,
        State state,
        Optional<Identity> identity,
        Optional<PollResult> pollResult,
        Optional<Trouble> trouble,
        String why) {
    /** How far the acquaintance has come. */
    public enum State {
        ASKING,
        ANSWERS,
        ABSENT
    }

    public static Seen asking(String instrument) {
        return new Seen(instrument, State.ASKING, Optional.empty(), Optional.empty(), Optional.empty(), "");
    }

    static Seen answers(Identity identity, PollResult pollResult) {
        return new Seen(
                pollResult.instrument(),
                State.ANSWERS,
                Optional.of(identity),
                Optional.of(pollResult),
                Optional.empty(),
                "");
    }

    static Seen absent(String instrument, Optional<Trouble> trouble, String why) {
        return new Seen(instrument, State.ABSENT, Optional.empty(), Optional.empty(), trouble, why);
    }
}
