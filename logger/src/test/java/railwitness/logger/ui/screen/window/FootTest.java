package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.logger.ui.screen.stage.Question;

/** What stands at the foot of the window is what must be done now, whatever stood there before. */
class FootTest {
    private final List<String> answered = new ArrayList<>();

    private Question question(String key, String sentence) {
        return new Question(
                        key,
                        sentence,
                        Optional.empty(),
                        List.of(new Question.Answer("Done", typed -> answered.add(sentence))))
                .enlarged();
    }

    @Test
    void aPromptTakesThePlaceOfTheOneItFollows() throws Exception {
        Screenshots.onScreen(() -> {
            Foot foot = new Foot(() -> {});
            foot.ask(question("prompt", "Set the voltage"));
            foot.ask(question("prompt", "Set the current"));
            foot.answered();
            return true;
        });
        assertThat(answered).containsExactly("Set the current");
    }

    @Test
    void switchingOffComesBeforeEverythingThatWaits() throws Exception {
        Screenshots.onScreen(() -> {
            Foot foot = new Foot(() -> {});
            foot.ask(question("note", "Write a note"));
            foot.ask(question("prompt", "Set the voltage"));
            foot.askFirst(question("prompt", "Switch the supply off"));
            foot.answered();
            foot.answered();
            assertThat(foot.asking()).isFalse();
            return true;
        });
        assertThat(answered).containsExactly("Switch the supply off", "Write a note");
    }
}
