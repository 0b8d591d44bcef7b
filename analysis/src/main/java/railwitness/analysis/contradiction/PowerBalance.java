package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import railwitness.analysis.uncertainty.Estimate;

/** More power out than in, a loss below zero, or a current that the supply cannot give. */
final class PowerBalance {
    /** Power of a step that had not settled may lie this share aside: not all readings belong to one moment. */
    private static final double UNSETTLED = 0.05;

    /** A supply's limit is set this exactly, at worst. */
    private static final double ABOVE_LIMIT = 1.1;

    private final Evidence evidence;
    private final Predicate<String> vouched;

    /** @param vouched channels that a second instrument confirms */
    PowerBalance(Evidence evidence, Predicate<String> vouched) {
        this.evidence = evidence;
        this.vouched = vouched;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        beyondInput().ifPresent(found::add);
        beyondSupply().ifPresent(found::add);
        return found;
    }

    /** Whether a step gives out more than it takes, whatever its instruments may be off by. */
    static boolean impossible(Testimony step) {
        return surplus(step) > 0;
    }

    /** A unit that has given up takes and gives nothing; meters read so little beside it (common practice, no source). */
    private static final double LITTLE_WATTS = 0.05;

    private static double surplus(Testimony step) {
        Estimate loss = step.point().loss();
        double in = step.point().input().power().value();
        double out = Evidence.outWatts(step);
        double aside = step.point().settled() ? 0 : UNSETTLED * Math.max(in, out);
        return -loss.value() - Evidence.honest(loss, Math.max(Math.abs(in), out), 0) - aside - LITTLE_WATTS;
    }

    private Optional<Contradiction> beyondInput() {
        List<Testimony> wrong =
                evidence.steps.stream().filter(PowerBalance::impossible).toList();
        return wrong.stream()
                .max(Comparator.comparingDouble(PowerBalance::surplus))
                .map(worst -> {
                    double in = worst.point().input().power().value();
                    double out = Evidence.outWatts(worst);
                    return new Contradiction(
                            ContradictionCode.POWER_BALANCE,
                            "more power comes out than goes in: " + Evidence.watts(out) + " out, " + Evidence.watts(in)
                                    + " in" + efficiency(in, out) + " (" + worst.where()
                                    + (wrong.size() > 1 ? " and " + (wrong.size() - 1) + " more" : "") + ")",
                            check(),
                            doubted());
                });
    }

    private static String efficiency(double in, double out) {
        return in > 0 ? String.format(Locale.ROOT, ", %.0f %%", 100 * out / in) : "";
    }

    private String check() {
        List<String> where = new ArrayList<>();
        Set<String> doubted = doubted();
        if (doubted.contains(Evidence.INPUT_AMPS)) {
            where.add("the input shunt: its value on the bench sheet, its leads, its channel");
        }
        if (evidence.steps.stream().anyMatch(step -> !step.resistorAmps().isEmpty())) {
            where.add("which load resistor was switched in");
        }
        if (doubted.stream().anyMatch(channel -> channel.endsWith(".current") && !channel.startsWith("input"))) {
            where.add("the load currents: shunts and channels");
        }
        if (doubted.contains(Evidence.INPUT_VOLTS)) {
            where.add("the input voltage at the unit's own terminals");
        }
        where.add("the rails' meters");
        return String.join("; ", where);
    }

    private Set<String> doubted() {
        Set<String> all = new TreeSet<>(Set.of(Evidence.INPUT_VOLTS, Evidence.INPUT_AMPS));
        evidence.rails.forEach(rail -> all.addAll(Set.of(rail + ".voltage", rail + ".current")));
        Set<String> open = new TreeSet<>(all);
        open.removeIf(vouched);
        return open.isEmpty() ? all : open;
    }

    private Optional<Contradiction> beyondSupply() {
        if (!evidence.witnesses.soleSource() || evidence.witnesses.supplyAmps().isEmpty()) {
            return Optional.empty();
        }
        double most = evidence.witnesses.supplyAmps().getAsDouble();
        List<Testimony> beyond = evidence.steps.stream()
                .filter(step -> step.value(Evidence.INPUT_AMPS).isPresent())
                .filter(step -> step.value(Evidence.INPUT_AMPS).getAsDouble()
                        > ABOVE_LIMIT * most + evidence.honest(step, Evidence.INPUT_AMPS))
                .toList();
        return beyond.stream()
                .findFirst()
                .map(step -> new Contradiction(
                        ContradictionCode.POWER_BALANCE,
                        "the input current reads " + Evidence.amps(evidence.most(Evidence.INPUT_AMPS))
                                + ": the supply gives " + Evidence.amps(most) + " at most (" + Evidence.at(beyond)
                                + ")",
                        "the input shunt: its value on the bench sheet, its channel; a clamp beside it",
                        Set.of(Evidence.INPUT_AMPS)));
    }
}
