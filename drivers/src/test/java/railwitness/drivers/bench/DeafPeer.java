package railwitness.drivers.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Peer;

/** An instrument that answers a few questions and is deaf to everything else; it keeps no errors. */
final class DeafPeer implements Peer {
    private static final Duration TIME = Duration.ofMillis(20);
    private final Map<String, String> answers = new HashMap<>();
    private final List<String> heard = new ArrayList<>();

    DeafPeer(String identity) {
        answers.put("*IDN?", identity);
    }

    /** @param answer null for silence from now on */
    DeafPeer answers(String question, String answer) {
        answers.put(question, answer);
        return this;
    }

    List<String> heard() {
        return heard;
    }

    @Override
    public Answer hear(String message) {
        heard.add(message);
        String answer = answers.get(message);
        return answer == null ? Answer.silence(TIME) : Answer.of(answer, TIME);
    }
}
