package railwitness.analysis.contradiction;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Reach;

/** All steps of a session, with what the rules ask of them. */
final class Evidence {
    static final String INPUT_VOLTS = "input.voltage";
    static final String INPUT_AMPS = "input.current";
    static final String SUPPLY_VOLTS = "supply.voltage";
    static final String SUPPLY_AMPS = "supply.current";

    /** Accuracy taken for an instrument of which none is stated, as a share of its reading (common practice, no source). */
    private static final double UNSTATED = 0.03;

    /** The same, as a share of the largest it read: its zero. */
    private static final double UNSTATED_ZERO = 0.003;

    /** A rail at less than this share of its highest has given up or is off. */
    private static final double UP = 0.5;

    private static final String STANDBY = "standby";

    final List<Testimony> steps;
    final Optional<Design> design;
    final Witnesses witnesses;
    final List<String> rails;

    Evidence(Optional<Design> design, Witnesses witnesses) {
        this.design = design;
        this.witnesses = witnesses;
        this.steps = witnesses.testimonies();
        this.rails = design.map(sheet -> sheet.rails().stream().map(Rail::name).toList())
                .orElseGet(() -> steps.stream()
                        .flatMap(step -> step.point().rails().keySet().stream())
                        .distinct()
                        .toList());
    }

    /** How far that estimate may honestly be off; {@code size} of the readings behind it, {@code most} of all of them. */
    static double honest(Estimate estimate, double size, double most) {
        return Reach.of(estimate) + (estimate.known() ? 0 : UNSTATED * Math.abs(size) + UNSTATED_ZERO * Math.abs(most));
    }

    double honest(Testimony step, String channel) {
        Estimate mean = step.mean(channel).orElseThrow();
        return honest(mean, mean.value(), most(channel));
    }

    /** What rests on a reading of the supply: the input, where no meter reads it. */
    String used(String channel) {
        String input = channel.replace("supply.", "input.");
        return steps.stream().anyMatch(step -> step.value(input).isPresent()) ? channel : input;
    }

    /** Largest magnitude of a channel; 0 where it was never read. */
    double most(String channel) {
        return steps.stream()
                .flatMapToDouble(step -> step.value(channel).stream())
                .map(Math::abs)
                .max()
                .orElse(0);
    }

    double most(ToDoubleFunction<Testimony> of) {
        return steps.stream().mapToDouble(of).max().orElse(0);
    }

    static double outWatts(Testimony step) {
        return step.point().outputPower().value();
    }

    static boolean standby(Testimony step) {
        return step.point().stage().equals(STANDBY);
    }

    boolean isUp(Testimony step, String rail) {
        OptionalDouble volts = step.value(rail + ".voltage");
        return !standby(step)
                && volts.isPresent()
                && Math.abs(volts.getAsDouble()) >= UP * most(rail + ".voltage")
                && volts.getAsDouble() != 0;
    }

    boolean allUp(Testimony step) {
        return !rails.isEmpty() && rails.stream().allMatch(rail -> isUp(step, rail));
    }

    /** The sign a rail must have: the sheet's, else its name's; empty where neither tells. */
    OptionalDouble sign(String rail) {
        Optional<Double> stated = design.flatMap(sheet -> sheet.rail(rail)).map(Rail::nominalVolts);
        if (stated.isPresent()) {
            return OptionalDouble.of(Math.signum(stated.get()));
        }
        return switch (rail) {
            case "plus", "positive" -> OptionalDouble.of(1);
            case "minus", "negative" -> OptionalDouble.of(-1);
            default -> OptionalDouble.empty();
        };
    }

    /** What is said of the steps concerned: the first by name, the others by number. */
    static String at(Collection<Testimony> concerned) {
        String first = concerned.iterator().next().where();
        return concerned.size() == 1 ? first : first + " and " + (concerned.size() - 1) + " more";
    }

    boolean measuresAll(OperatingPoint point) {
        return !rails.isEmpty() && point.rails().keySet().containsAll(rails);
    }

    static String rail(String channel) {
        return channel.substring(0, channel.indexOf('.'));
    }

    /** A channel in words: {@code input current}, {@code plus voltage}. */
    static String words(String channel) {
        return channel.replace('.', ' ');
    }

    static String amps(double value) {
        return number(value) + " A";
    }

    static String volts(double value) {
        return number(value) + " V";
    }

    static String watts(double value) {
        return number(value) + " W";
    }

    static String number(double value) {
        double size = Math.abs(value);
        int places = size >= 100 ? 1 : size >= 10 ? 2 : size >= 0.1 ? 3 : 5;
        return String.format(java.util.Locale.ROOT, "%." + places + "f", value);
    }
}
