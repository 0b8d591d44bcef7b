package railwitness.analysis.contradiction;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Prediction;

/** Which of two that disagree is the likelier to be wrong, by a third: the balance of power, then the design sheet. */
final class Doubt {
    private final Evidence evidence;

    Doubt(Evidence evidence) {
        this.evidence = evidence;
    }

    /** True: the input meter; false: the supply's own reading. */
    boolean inputMeter(Testimony step) {
        double meter = step.value(Evidence.INPUT_AMPS).orElse(0);
        double supply = step.value(Evidence.SUPPLY_AMPS).orElse(0);
        double volts = step.value(Evidence.INPUT_VOLTS)
                .orElse(step.value(Evidence.SUPPLY_VOLTS).orElse(0));
        double out = Evidence.outWatts(step);
        boolean meterTooLittle = meter * volts < out;
        boolean supplyTooLittle = supply * volts < out;
        if (meterTooLittle != supplyTooLittle) {
            return meterTooLittle;
        }
        OptionalDouble expected = prediction(step)
                .map(prediction -> OptionalDouble.of(prediction.inputAmperes()))
                .orElse(OptionalDouble.empty());
        return expected.isEmpty()
                || Math.abs(meter - expected.getAsDouble()) >= Math.abs(supply - expected.getAsDouble());
    }

    /** True: the meter; false: the load's own reading. */
    boolean railMeter(Testimony step, String rail, String own) {
        Optional<Double> expected = prediction(step)
                .map(prediction -> Math.abs(prediction.railVolts().getOrDefault(rail, 0.0)));
        double meter = Math.abs(step.value(rail + ".voltage").orElse(0));
        double load = Math.abs(step.value(own).orElse(0));
        return expected.map(volts -> Math.abs(meter - volts) >= Math.abs(load - volts))
                .orElse(true);
    }

    /** What the sheet leads to expect at this step. */
    Optional<Prediction> prediction(Testimony step) {
        double volts = step.point().input().voltage().value();
        if (evidence.design.isEmpty() || !(volts > 0) || Evidence.standby(step)) {
            return Optional.empty();
        }
        Map<String, Double> amps = new HashMap<>();
        step.point().rails().forEach((rail, at) -> amps.put(rail, at.current().value()));
        try {
            return Prediction.of(evidence.design.get(), volts, amps);
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
