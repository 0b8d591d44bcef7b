package railwitness.logger.ui.screen.live;

import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.logger.recording.record.StepForecast;
import railwitness.logger.recording.store.StepEntry;

/**
 * A step of the plan as far as it has come.
 *
 * @param began s of the session; empty while it is still to come
 * @param averagedFrom s; empty until it is averaged
 * @param ended s; empty until it has ended
 * @param entry once it has ended
 * @param point its averages, once it is measured
 */
public record StepView(
        StepForecast forecast,
        OptionalDouble began,
        OptionalDouble averagedFrom,
        OptionalDouble ended,
        boolean settled,
        Optional<StepEntry> entry,
        Optional<OperatingPoint> point) {
    /** A step that is only predicted yet. */
    public static StepView toCome(StepForecast forecast) {
        return new StepView(
                forecast,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                false,
                Optional.empty(),
                Optional.empty());
    }

    StepView beginning(double at) {
        return new StepView(forecast, OptionalDouble.of(at), averagedFrom, ended, settled, entry, point);
    }

    StepView averaging(double at, boolean isSettled) {
        return new StepView(forecast, began, OptionalDouble.of(at), ended, isSettled, entry, point);
    }

    StepView over(double at, StepEntry written, Optional<OperatingPoint> measured) {
        return new StepView(
                forecast, began, averagedFrom, OptionalDouble.of(at), settled, Optional.of(written), measured);
    }

    /** It goes on right now. */
    public boolean live() {
        return began.isPresent() && ended.isEmpty();
    }
}
