package railwitness.logger.ui.screen.stage;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Something a person must answer.
 *
 * @param key two questions of one key are the same question
 * @param sentence what is to be done, in one sentence
 * @param field name of what is to be typed; empty where a key is enough
 * @param answers what can be answered, the usual one first; each is told what was typed
 */
public record Question(String key, String sentence, Optional<String> field, List<Answer> answers) {
    public Question {
        answers = List.copyOf(answers);
    }

    /** One answer, on a button. */
    public record Answer(String label, Consumer<String> chosen) {}
}
