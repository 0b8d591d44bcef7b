package railwitness.logger.recording.record;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.power.Chain;
import railwitness.safety.power.Power;
import railwitness.safety.power.Result;

/**
 * Brings the bench from one step's set points to the next: loads that fall first, then the input, then loads that rise,
 * so that nothing between two steps asks for more than either. Rails without a programmable load are switched by the
 * person.
 */
final class StepSetter {
    private final Power power;
    private final RunSetup setup;
    private final Person person;
    private final Map<String, Double> amps = new HashMap<>();
    private final Map<String, Double> ohmsOf = new HashMap<>();
    private final Consumer<Boolean> moving;
    private final Consumer<SessionEvent> happened;
    private double volts;
    private double asked;

    /**
     * @param moving told true before set points move and false when all stand again
     * @param happened told what the person switched
     */
    StepSetter(RunSetup setup, Power power, Person person, Consumer<Boolean> moving, Consumer<SessionEvent> happened) {
        this.moving = moving;
        this.happened = happened;
        this.setup = setup;
        this.power = power;
        this.person = person;
        this.volts = setup.nominalVolts();
        this.asked = volts;
    }

    /** The supply's setting, V. */
    double volts() {
        return volts;
    }

    /** Settings of the programmable loads by rail, A. */
    Map<String, Double> programmed() {
        Map<String, Double> programmed = new HashMap<>(amps);
        programmed.keySet().retainAll(setup.programmableRails());
        return programmed;
    }

    void set(Step step, Consumer<Result> then) {
        Chain changes = Chain.begin();
        boolean raised = volts > asked;
        double before = raised ? asked : volts;
        if (raised) {
            changes.then(done -> setVolts(before, done)); // what leads took is no longer lost once the load falls
        }
        asked = step.inputVolts();
        step.loadAmps().forEach((rail, wanted) -> {
            if (wanted < amps.getOrDefault(rail, 0.0)) {
                changes.then(load(rail, wanted));
            }
        });
        if (step.inputVolts() != before) {
            changes.then(done -> setVolts(step.inputVolts(), done));
        }
        step.loadAmps().forEach((rail, wanted) -> {
            if (wanted > amps.getOrDefault(rail, 0.0)) {
                changes.then(load(rail, wanted));
            }
        });
        makeAll(changes, then);
    }

    /** The output goes off and with it the loads that can be told so; first power sets the input to its nominal value. */
    void switchedOff() {
        amps.keySet().removeAll(setup.programmableRails());
        volts = setup.nominalVolts();
        asked = volts;
    }

    /** Back to what the last step asked for, where the supply was raised above it. */
    void lower(Consumer<Result> then) {
        if (volts > asked) {
            volts(asked, then);
        } else {
            then.accept(new Result.Done("not raised"));
        }
    }

    /** The input alone, V. */
    void volts(double wanted, Consumer<Result> then) {
        makeAll(Chain.begin().then(done -> setVolts(wanted, done)), then);
    }

    private void setVolts(double wanted, Consumer<Result> then) {
        volts = wanted;
        power.setVolts(wanted, then);
    }

    /** All loads to zero, at once. */
    void unload(Consumer<Result> then) {
        Chain changes = Chain.begin();
        new HashMap<>(amps).forEach((rail, now) -> {
            if (now > 0) {
                changes.then(load(rail, 0));
            }
        });
        makeAll(changes, then);
    }

    /** After the output went off: no load draws, and the input comes back at its nominal voltage. */
    void wentOff(Consumer<Result> then) {
        volts = setup.nominalVolts();
        unload(then);
    }

    private void makeAll(Chain changes, Consumer<Result> then) {
        moving.accept(true);
        changes.run(result -> {
            moving.accept(false);
            then.accept(result);
        });
    }

    private Chain.Step load(String rail, double wanted) {
        return done -> {
            amps.put(rail, wanted);
            if (setup.programmableRails().contains(rail)) {
                power.setLoad(rail, wanted, done);
            } else {
                person.switchLoad(rail, setup.resistor(rail, wanted).orElse(0), ohms -> {
                    switched(rail, ohms);
                    done.accept(new Result.Done(rail + " load switched by hand"));
                });
            }
        };
    }

    private void switched(String rail, double ohms) {
        ohmsOf.put(rail, ohms);
        happened.accept(new SessionEvent.LoadSwitched(rail, ohms));
    }

    /** The resistors that are switched to the rails now, ohm; a rail that is open or has a programmable load is not named. */
    Map<String, Double> resistors() {
        Map<String, Double> switchedIn = new TreeMap<>(ohmsOf);
        switchedIn.values().removeIf(ohms -> ohms == 0);
        return switchedIn;
    }
}
