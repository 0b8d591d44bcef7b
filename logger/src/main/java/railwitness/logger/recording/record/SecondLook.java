package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.recording.plan.Step;

/**
 * A meter read by eye: a value far from what the sheets lead to expect at this step is asked for once more, since a point
 * set wrong is the usual slip; what the person then says is taken.
 */
final class SecondLook {
    /** Wider than any fault that leaves a unit running, narrower than a point set one place wrong. */
    private static final double FACTOR = 4;

    /** Beyond this share a rail is not where it should be, and within the other it is where another one should be. */
    private static final double ELSEWHERE = 0.15;

    private static final double THERE = 0.05;

    private final Person person;
    private final Design design;
    private final double leadOhms;

    /** @param leadOhms from the source to the unit's terminals, ohm */
    SecondLook(Person person, Design design, double leadOhms) {
        this.person = person;
        this.design = design;
        this.leadOhms = leadOhms;
    }

    void read(HandRead meter, Step step, Consumer<OptionalDouble> value) {
        OptionalDouble expected = expected(meter.reads(), step);
        person.read(meter, first -> {
            Optional<String> doubt = first.isPresent() && expected.isPresent()
                    ? doubt(meter, step, first.getAsDouble(), expected.getAsDouble())
                    : Optional.empty();
            if (doubt.isPresent()) {
                person.readAgain(meter, doubt.get(), value);
            } else {
                value.accept(first);
            }
        });
    }

    private Optional<String> doubt(HandRead meter, Step step, double typed, double expected) {
        Optional<String> other = like(meter, step, typed, expected);
        boolean sign = Math.abs(typed / expected + 1) < THERE; // on the other rail, or turned round: both are said
        if (sign || other.isEmpty()) {
            return doubtful(typed, expected) ? Optional.of(doubt(meter, typed, expected)) : Optional.empty();
        }
        return other;
    }

    /** Leads that stayed at another place, or are reversed there: the number fits that place and not this one. */
    private Optional<String> like(HandRead meter, Step step, double typed, double expected) {
        if (meter.reads().quantity() != Quantity.VOLTAGE || Math.abs(typed / expected - 1) < ELSEWHERE) {
            return Optional.empty();
        }
        List<String> places = new ArrayList<>();
        places.add("input");
        design.rails().forEach(rail -> places.add(rail.name()));
        places.remove(meter.reads().node());
        return places.stream()
                .filter(place -> expected(new Channel(place, Quantity.VOLTAGE), step).stream()
                        .anyMatch(there -> Math.abs(typed / there - 1) < THERE))
                .findFirst()
                .map(place -> String.format(
                        Locale.ROOT,
                        "%.4g V is what %s should show, not %s: are the leads at the right place and the right way round",
                        typed,
                        place,
                        meter.reads().node()));
    }

    static boolean doubtful(double typed, double expected) {
        double share = typed / expected;
        return expected != 0 && !(share > 1 / FACTOR && share < FACTOR);
    }

    private static String doubt(HandRead meter, double typed, double expected) {
        String unit = meter.reads().quantity().unit();
        String what = typed * expected < 0 ? "the sign, the place of the leads" : "the point";
        return String.format(
                Locale.ROOT,
                "%.4g %s is far from the %.3g %s that the sheets lead to expect here: look at %s and the range once more",
                typed,
                unit,
                expected,
                unit,
                what);
    }

    private OptionalDouble expected(Channel channel, Step step) {
        if (!step.remoteOn()) {
            return OptionalDouble.empty();
        }
        Optional<Prediction> predicted = StepForecast.of(design, step, leadOhms).predicted();
        if (channel.node().equals("input") || channel.node().equals("supply")) {
            return channel.quantity() == Quantity.VOLTAGE
                    ? OptionalDouble.of(step.inputVolts())
                    : input(channel, step, predicted);
        }
        return channel.quantity() == Quantity.VOLTAGE ? rail(channel.node(), predicted) : OptionalDouble.empty();
    }

    private static OptionalDouble input(Channel channel, Step step, Optional<Prediction> predicted) {
        boolean loaded = step.loadAmps().values().stream().anyMatch(amps -> amps > 0);
        return channel.quantity() == Quantity.CURRENT
                ? predicted.filter(at -> loaded || at.complete()).stream()
                        .mapToDouble(Prediction::inputAmperes)
                        .findFirst()
                : OptionalDouble.empty();
    }

    private OptionalDouble rail(String name, Optional<Prediction> predicted) {
        OptionalDouble volts = predicted.map(at -> at.rail(name)).orElse(OptionalDouble.empty());
        return volts.isPresent()
                ? volts
                : design.rail(name).stream().mapToDouble(Rail::nominalVolts).findFirst();
    }
}
