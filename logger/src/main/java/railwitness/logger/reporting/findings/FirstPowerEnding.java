package railwitness.logger.reporting.findings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.cause.EarlyEnding;
import railwitness.analysis.cause.Evidence;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.store.EventEntry;
import railwitness.safety.power.FirstPowerEnd;

/** What a first power that ended early says of the unit: with the remote turn-on off, or on. */
final class FirstPowerEnding {
    static final String STAGE = "power-up";

    private FirstPowerEnding() {}

    /**
     * Empty where it ended for another reason: an instrument that did not answer says nothing of the unit.
     *
     * @param rails how many rails are read
     * @param standby whether the current in standby had been measured before
     */
    static Optional<EarlyEnding> of(EventEntry event, OptionalDouble lastAmps, int rails, boolean standby) {
        if (event.event() instanceof SessionEvent.FirstPowerEnded ended) {
            Optional<EarlyEnding> ending = of(ended.end(), lastAmps, rails);
            boolean seen = standby || !(ended.end() instanceof FirstPowerEnd.TooMuchOn on) || on.blocked();
            return seen
                    ? ending
                    : ending.map(found -> found.with(found.evidence().notSeenToBlock()));
        }
        return event.event() instanceof SessionEvent.Earlier earlier
                ? EarlierEnding.firstPower(earlier, lastAmps, rails)
                : Optional.empty();
    }

    /** Where it is not known that the current in standby had been measured. */
    static Optional<EarlyEnding> of(EventEntry event, OptionalDouble lastAmps, int rails) {
        return of(event, lastAmps, rails, false);
    }

    private static Optional<EarlyEnding> of(FirstPowerEnd end, OptionalDouble lastAmps, int rails) {
        if (end instanceof FirstPowerEnd.NotUp down) {
            List<String> names =
                    down.low().stream().map(FirstPowerEnd.RailSeen::name).toList();
            return Optional.of(new EarlyEnding(STAGE, lastAmps.orElse(0), true, names, names.size() < rails)
                    .with(new Evidence(volts(down.low()), false, true, down.limits())));
        }
        if (lastAmps.isEmpty()) {
            return Optional.empty();
        }
        double amps = lastAmps.getAsDouble();
        if (end instanceof FirstPowerEnd.TooMuchOn on) {
            return Optional.of(new EarlyEnding(STAGE, amps, true)
                    .with(new Evidence(volts(on.rails()), on.noShort(), on.boundKnown(), false)));
        } else if (end instanceof FirstPowerEnd.TooMuchOff off) {
            return Optional.of(new EarlyEnding(STAGE, amps, false)
                    .with(new Evidence(Map.of(), false, off.boundKnown(), off.limits())));
        }
        return end instanceof FirstPowerEnd.Exchanged
                ? Optional.of(new EarlyEnding(STAGE, amps, true).with(new Evidence(Map.of(), false, true, false)))
                : Optional.empty();
    }

    private static Map<String, Double> volts(List<FirstPowerEnd.RailSeen> rails) {
        Map<String, Double> volts = new LinkedHashMap<>();
        rails.forEach(rail -> rail.volts().ifPresent(value -> volts.put(rail.name(), value)));
        return volts;
    }
}
