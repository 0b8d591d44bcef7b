package railwitness.logger.ui.screen.live;

import java.awt.Toolkit;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import railwitness.logger.recording.record.Person;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** The person in front of the screen: asked there one thing after the other. */
final class ScreenPerson implements Person {
    private final Consumer<Prompt> asked;
    private final Runnable forgotten;

    /** @param forgotten told that nothing asked before is wanted any more */
    ScreenPerson(Consumer<Prompt> asked, Runnable forgotten) {
        this.asked = asked;
        this.forgotten = forgotten;
    }

    @Override
    public void act(String sentence, Runnable done) {
        asked.accept(new Prompt(sentence, Prompt.Kind.ACT, typed -> done.run()));
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        asked.accept(new Prompt(sentence, Prompt.Kind.NUMBER, typed -> {
            OptionalDouble number = Numbers.parsed(typed);
            if (number.isEmpty() && !typed.isBlank()) {
                read(sentence, value);
            } else {
                value.accept(number);
            }
        }));
    }

    @Override
    public void disconnect(String sentence, Runnable open) {
        asked.accept(new Prompt(Words.of("prompt.disconnect"), Prompt.Kind.DISCONNECT, typed -> {
            if (typed.strip().equalsIgnoreCase(Words.of("prompt.disconnect.word"))) {
                open.run();
            } else {
                disconnect(sentence, open);
            }
        }));
    }

    @Override
    public void switchOff(String sentence, Runnable isOff) {
        asked.accept(new Prompt(Words.of("prompt.knobs"), Prompt.Kind.SWITCH_OFF, typed -> {
            if (typed.strip().equalsIgnoreCase(Words.of("prompt.knobs.word"))) {
                isOff.run();
            } else {
                switchOff(sentence, isOff);
            }
        }));
    }

    @Override
    public void offNow() {
        Toolkit.getDefaultToolkit().beep();
    }

    @Override
    public void forget() {
        forgotten.run();
    }
}
