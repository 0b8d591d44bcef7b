package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The input is moved at constant load.
 *
 * @param loadPercent of full load, all rails
 * @param inputVolts settings of the supply in the order given, V
 * @param dropOutStepVolts if given, the input is lowered by this from the lowest setting on until the unit drops out, V
 */
public record LineSweep(double loadPercent, List<Double> inputVolts, OptionalDouble dropOutStepVolts, Timing timing)
        implements Stage {
    /** Below this share of the lowest input nothing is looked for any more. */
    private static final double LOWEST_SHARE = 0.4;

    public LineSweep {
        inputVolts = List.copyOf(inputVolts);
    }

    @Override
    public String word() {
        return "line-sweep";
    }

    @Override
    public List<Step> steps(Rating rating) {
        Map<String, Double> amps = rating.atPercent(loadPercent);
        List<Step> steps = new ArrayList<>();
        for (double volts : inputVolts) {
            steps.add(new Step(word(), Percent.plain(volts) + " V", volts, amps, timing));
        }
        dropOutStepVolts.ifPresent(step -> steps.addAll(downwards(amps, step)));
        return steps;
    }

    private List<Step> downwards(Map<String, Double> amps, double stepVolts) {
        double lowest =
                inputVolts.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        Timing quick = new Timing(Duration.ofSeconds(1), Duration.ofSeconds(1));
        List<Step> steps = new ArrayList<>();
        for (int i = 1; lowest - i * stepVolts > LOWEST_SHARE * lowest; i++) {
            double volts = Math.round((lowest - i * stepVolts) * 1000) / 1000.0;
            steps.add(new Step(
                    word(), "down " + Percent.plain(volts) + " V", volts, amps, true, quick, Duration.ZERO, true));
        }
        return steps;
    }
}
