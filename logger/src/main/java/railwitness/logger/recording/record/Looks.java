package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.logger.recording.plan.Step;
import railwitness.safety.power.Chain;
import railwitness.safety.power.Discharge;
import railwitness.safety.power.Result;

/**
 * What a person reads at a supply that has only knobs while no step is averaged: as the unit comes up, and the rails after
 * power until they are low. One round of questions at a time.
 */
final class Looks {
    private final RunSetup setup;
    private final Person person;
    private final SecondLook second;
    private final Consumer<Measured> typed;
    private boolean asking;
    private int round;

    /** @param typed told each number, on the scheduler */
    Looks(RunSetup setup, Person person, Consumer<Measured> typed) {
        this.setup = setup;
        this.person = person;
        this.second =
                new SecondLook(person, setup.design(), setup.bench().sheet().leadResistanceOhms());
        this.typed = typed;
    }

    /** Nothing that was asked is wanted any more. */
    void forget() {
        round++;
        asking = false;
    }

    /** @param from when a look is wanted from, ns; empty while none is */
    void firstPower(OptionalLong from) {
        if (setup.looksByHand() && from.isPresent() && setup.scheduler().nowNanos() >= from.getAsLong() && !asking) {
            ask(firstRound(), setup.unloaded());
        }
    }

    /**
     * The input current first, where no lead is moved for it, because it tells of a short; and last, for the unit is
     * judged when it is read, and by then all is there.
     */
    private List<HandRead> firstRound() {
        List<HandRead> rails = new ArrayList<>();
        List<HandRead> last = new ArrayList<>();
        List<Channel> seen = setup.seenRails();
        for (HandRead meter : setup.handRead()) {
            if (meter.reads().equals(setup.inputCurrent())) {
                last.add(meter);
            } else if (seen.contains(meter.reads()) || meter.reads().node().equals("supply")) {
                rails.add(meter);
            }
        }
        List<HandRead> order = new ArrayList<>();
        last.stream().filter(meter -> meter.moved().isEmpty()).forEach(order::add);
        order.addAll(rails);
        order.addAll(last);
        return order;
    }

    /** The rails that a person reads and that are not low yet. */
    void discharge(Optional<Discharge> rails) {
        if (rails.isPresent() && !asking) {
            List<HandRead> high = setup.handRead().stream()
                    .filter(meter -> setup.seenRails().contains(meter.reads()))
                    .filter(meter -> !rails.get().isLow(meter.reads()))
                    .toList();
            if (!high.isEmpty()) {
                ask(high, Optional.empty());
            }
        }
    }

    private void ask(List<HandRead> meters, Optional<Step> expected) {
        asking = true;
        int mine = round;
        Chain looks = Chain.whileWanted(() -> mine == round);
        meters.forEach(meter -> looks.then(done -> read(meter, expected, value -> {
            if (mine == round) {
                long now = setup.scheduler().nowNanos();
                value.ifPresent(number -> typed.accept(new Measured(meter.reads(), number, now, now)));
            }
            done.accept(new Result.Done("read"));
        })));
        looks.run(over -> asking &= mine != round);
    }

    /** What is far from what a rail should show is asked once more; a current is taken as it comes. */
    private void read(HandRead meter, Optional<Step> expected, Consumer<OptionalDouble> value) {
        if (expected.isPresent() && setup.seenRails().contains(meter.reads())) {
            second.read(meter, expected.get(), value);
        } else {
            person.read(meter, value);
        }
    }
}
