package railwitness.logger.screen.live;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import railwitness.logger.record.Person;
import railwitness.logger.screen.paper.Numbers;

/** The person in front of the screen: asked there one thing after the other. */
final class ScreenPerson implements Person {
    private final Consumer<Prompt> asked;

    ScreenPerson(Consumer<Prompt> asked) {
        this.asked = asked;
    }

    @Override
    public void act(String sentence, Runnable done) {
        asked.accept(new Prompt(sentence, false, typed -> done.run()));
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        asked.accept(new Prompt(sentence, true, typed -> {
            OptionalDouble number = Numbers.parsed(typed);
            if (number.isEmpty() && !typed.isBlank()) {
                read(sentence, value);
            } else {
                value.accept(number);
            }
        }));
    }
}
