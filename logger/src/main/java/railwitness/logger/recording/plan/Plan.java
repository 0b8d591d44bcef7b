package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What is done with a unit, in order.
 *
 * @param name what the person calls it
 * @param stages at least one
 * @param answerAtMost how long a person may take for what is asked while the output is on, above zero
 * @param raiseAtMostVolts where the unit's terminals are held at each step's input instead of the supply: how far above it the
 *     supply may be set for what is lost on the way, V; empty where the supply is held
 */
public record Plan(String name, List<Stage> stages, Duration answerAtMost, OptionalDouble raiseAtMostVolts) {
    public Plan {
        if (answerAtMost.isNegative() || answerAtMost.isZero()) {
            throw new IllegalArgumentException("a person needs time to answer, not " + answerAtMost);
        }
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("a plan needs at least one [[stage]]");
        }
    }

    /** The steps of all stages, in order. */
    public List<Step> steps(Rating rating) {
        Iterator<String> names = holds().keySet().iterator();
        return stages.stream()
                .flatMap(stage ->
                        (stage instanceof Hold hold ? hold.steps(rating, names.next()) : stage.steps(rating)).stream())
                .toList();
    }

    /** The holds in their order, by names that differ: {@code 75 %}, {@code 75 % no. 2}. */
    public Map<String, Hold> holds() {
        Map<String, Hold> named = new LinkedHashMap<>();
        for (Stage stage : stages) {
            if (stage instanceof Hold hold) {
                String name = hold.loadWords();
                for (int number = 2; named.containsKey(name); number++) {
                    name = hold.loadWords() + " no. " + number;
                }
                named.put(name, hold);
            }
        }
        return named;
    }

    /** How the unit is powered up, where the plan says so. */
    public Optional<PowerUp> powerUp() {
        return stages.stream()
                .filter(PowerUp.class::isInstance)
                .map(PowerUp.class::cast)
                .findFirst();
    }

    /** What is measured at the transformer before it is in the unit, where the plan begins so. */
    public Optional<TransformerTest> transformer() {
        return tests().filter(test -> !test.cooling()).findFirst();
    }

    /** What is measured at the transformer while it cools, where the plan ends so. */
    public Optional<TransformerTest> cooling() {
        return tests().filter(TransformerTest::cooling).findFirst();
    }

    private Stream<TransformerTest> tests() {
        return stages.stream().filter(TransformerTest.class::isInstance).map(TransformerTest.class::cast);
    }

    /** Whether the unit is powered at all. */
    public boolean powersUnit() {
        return stages.stream().anyMatch(stage -> !(stage instanceof TransformerTest));
    }

    /** At most this long, settling limits and holds included, power-up and discharge aside. */
    public Duration atMost(Rating rating) {
        return steps(rating).stream()
                .map(s -> s.timing().settleAtMost().plus(s.timing().average()).plus(s.hold()))
                .reduce(Duration.ZERO, Duration::plus);
    }

    /** Highest supply setting of any step, what it is raised by included, V: the voltage that the cautions must count with. */
    public double highestInputVolts(Rating rating) {
        return steps(rating).stream().mapToDouble(Step::highestVolts).max().orElse(rating.nominalInputVolts())
                + raiseAtMostVolts.orElse(0);
    }
}
