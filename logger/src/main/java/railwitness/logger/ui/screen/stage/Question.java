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
 * @param large as large as the window allows
 */
public record Question(String key, String sentence, Optional<String> field, List<Answer> answers, boolean large) {
    public Question {
        answers = List.copyOf(answers);
    }

    public Question(String key, String sentence, Optional<String> field, List<Answer> answers) {
        this(key, sentence, field, answers, false);
    }

    /** The same, to be read from the load bank and answered by one large key or a footswitch. */
    public Question enlarged() {
        return new Question(key, sentence, field, answers, true);
    }

    /** Whether one key that needs no hand at the keyboard answers it. */
    public boolean handsFree() {
        return large && field.isEmpty() && !answers.isEmpty();
    }

    /** One answer, on a button. */
    public record Answer(String label, Consumer<String> chosen) {}
}
