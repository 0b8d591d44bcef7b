package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.sheet.Sheets;

/** A point set one place wrong is asked about once; what is plausible, or said again, is taken. */
class SecondLookTest {
    private final Deque<Double> answers = new ArrayDeque<>();
    private final List<String> doubts = new ArrayList<>();
    private final List<OptionalDouble> taken = new ArrayList<>();

    private final Person person = new Person() {
        @Override
        public void act(String sentence, Runnable done) {
            done.run();
        }

        @Override
        public void read(String sentence, Consumer<OptionalDouble> value) {
            if (sentence.contains("look at")) {
                doubts.add(sentence);
            }
            value.accept(answers.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(answers.poll()));
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            open.run();
        }

        @Override
        public void forget() {
            // nothing is kept
        }
    };

    private void read(String channel, double... typed) {
        for (double one : typed) {
            answers.add(one);
        }
        Sheets demo = Sheets.demo();
        Step full = demo.plan().content().steps(RunSetup.ratingOf(demo.design().content())).stream()
                .filter(step -> step.stage().equals("load-sweep") && step.name().startsWith("100"))
                .findFirst()
                .orElseThrow();
        HandRead meter = new HandRead("clamp", Channel.of(channel), OptionalDouble.empty(), Optional.empty());
        new SecondLook(person, demo.design().content(), 0.01).read(meter, full, taken::add);
    }

    @Test
    void aPointSetOnePlaceWrongIsAskedAbout() {
        double expected = 20; // within the factor of what the demo's unit draws at full load
        read("input.current", expected / 10, expected);
        assertThat(doubts).singleElement().asString().contains("2.000 A is far from the", "look at the point");
        assertThat(taken).containsExactly(OptionalDouble.of(expected));
    }

    @Test
    void aSignTurnedRoundIsAskedAbout() {
        read("plus.voltage", -37, 37);
        assertThat(doubts).singleElement().asString().contains("look at the sign");
        assertThat(taken).containsExactly(OptionalDouble.of(37));
    }

    @Test
    void whatIsSaidAgainIsTaken() {
        read("plus.voltage", 3.7, 3.7);
        assertThat(doubts).hasSize(1);
        assertThat(taken).containsExactly(OptionalDouble.of(3.7));
    }

    @Test
    void whatCanBeAndWhatIsLeftOutIsNotAskedAbout() {
        read("plus.voltage", 30);
        read("input.current");
        read("plus.ripple", 500);
        assertThat(doubts).isEmpty();
        assertThat(taken).hasSize(3);
    }
}
