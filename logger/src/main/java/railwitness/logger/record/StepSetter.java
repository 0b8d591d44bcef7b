package railwitness.logger.record;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.logger.plan.Step;
import railwitness.safety.power.Power;
import railwitness.safety.power.Result;

/**
 * Brings the bench from one step's set points to the next: loads that fall first, then the input, then loads that rise,
 * so that nothing between two steps asks for more than either. Rails without a programmable load are switched by the
 * person.
 */
final class StepSetter {
    private final Power power;
    private final Set<String> programmable;
    private final Person person;
    private final Map<String, Double> amps = new HashMap<>();
    private double volts;

    /** @param programmable rails with a load that the program sets */
    StepSetter(Power power, Set<String> programmable, Person person, double volts) {
        this.power = power;
        this.programmable = programmable;
        this.person = person;
        this.volts = volts;
    }

    /** One change of the bench, told how it ended. */
    private interface Change {
        void make(Consumer<Result> then);
    }

    void set(Step step, Consumer<Result> then) {
        List<Change> changes = new ArrayList<>();
        step.loadAmps().forEach((rail, wanted) -> {
            if (wanted < amps.getOrDefault(rail, 0.0)) {
                changes.add(load(rail, wanted));
            }
        });
        if (step.inputVolts() != volts) {
            changes.add(done -> volts(step.inputVolts(), done));
        }
        step.loadAmps().forEach((rail, wanted) -> {
            if (wanted > amps.getOrDefault(rail, 0.0)) {
                changes.add(load(rail, wanted));
            }
        });
        make(changes, 0, new Result.Done("nothing to change"), then);
    }

    /** The input alone, V. */
    void volts(double wanted, Consumer<Result> then) {
        volts = wanted;
        power.setVolts(wanted, then);
    }

    /** All loads to nought, at once. */
    void unload(Consumer<Result> then) {
        List<Change> changes = new ArrayList<>();
        new HashMap<>(amps).forEach((rail, now) -> {
            if (now > 0) {
                changes.add(load(rail, 0));
            }
        });
        make(changes, 0, new Result.Done("nothing to change"), then);
    }

    private Change load(String rail, double wanted) {
        return done -> {
            amps.put(rail, wanted);
            if (programmable.contains(rail)) {
                power.setLoad(rail, wanted, done);
            } else {
                person.act(
                        "Set the load of the " + rail + " rail to " + words(wanted),
                        () -> done.accept(new Result.Done(rail + " load set by hand")));
            }
        };
    }

    private static String words(double amps) {
        return amps == 0 ? "nothing (open)" : String.format(java.util.Locale.ROOT, "%.3g A", amps);
    }

    private void make(List<Change> changes, int index, Result before, Consumer<Result> then) {
        if (index == changes.size() || !before.isDone()) {
            then.accept(before);
        } else {
            changes.get(index).make(result -> make(changes, index + 1, result, then));
        }
    }
}
