package railwitness.drivers.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;

/** An instrument that answers what it was told to answer, keeps its last settings, and remembers all it heard. */
final class ScriptedPeer implements Peer {
    private static final Duration TIME = Duration.ofMillis(20);
    private final Map<String, String> answers = new HashMap<>();
    private final List<String> heard = new ArrayList<>();
    private String error = "0,\"No error\"";
    private String unknown = "";

    ScriptedPeer(String identity) {
        answers.put("*IDN?", identity);
    }

    ScriptedPeer answers(String question, String answer) {
        answers.put(question, answer);
        return this;
    }

    /** Messages that begin so are unknown to it. */
    ScriptedPeer knowsNo(String beginning) {
        unknown = beginning;
        return this;
    }

    List<String> heard() {
        return heard;
    }

    @Override
    public Answer hear(String message) {
        heard.add(message);
        if (message.equals("SYST:ERR?")) {
            String first = error;
            error = "0,\"No error\"";
            return Answer.of(first, TIME);
        }
        if (!unknown.isEmpty() && message.startsWith(unknown)) {
            error = "-113,\"Undefined header;" + message + "\"";
            return Answer.silence(TIME);
        }
        if (answers.containsKey(message)) {
            return Answer.of(answers.get(message), TIME);
        }
        return Answer.silence(TIME);
    }
}
