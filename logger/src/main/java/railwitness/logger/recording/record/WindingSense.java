package railwitness.logger.recording.record;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.transformer.Half;
import railwitness.analysis.transformer.Idle;
import railwitness.analysis.transformer.WindingFault;
import railwitness.analysis.transformer.WoundAsMeant;
import railwitness.analysis.transformer.WoundReadings;
import railwitness.analysis.transformer.WoundReport;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.drivers.winding.Hookup;
import railwitness.drivers.winding.Hookup.Kind;

/**
 * Whether a transformer may be powered, from what was read of it so far. Only what does harm under power keeps it out:
 * turns, polarity, a closed turn.
 */
final class WindingSense {
    private static final Set<WindingFault> HARMFUL = Set.of(
            WindingFault.REVERSED_HALF,
            WindingFault.SHORTED_TURN,
            WindingFault.MISMATCHED_HALVES,
            WindingFault.WRONG_TURNS);

    /** Of each reading here; the findings know it better. */
    private static final double SHARE = 0.005;

    private final Optional<WoundAsMeant> meant;
    private final Map<Hookup, Estimate> volts = new java.util.HashMap<>();

    WindingSense(Optional<WoundAsMeant> meant) {
        this.meant = meant;
    }

    void heard(Hookup hookup, double read, double amps) {
        if (!hookup.direct()) {
            volts.put(
                    hookup,
                    Estimate.of(read, Influence.normal("reading", SHARE, "1").times(read)));
        }
    }

    Optional<String> against() {
        return WoundReport.of(meant, readings(), Idle.none()).suspicions().stream()
                .filter(one -> HARMFUL.contains(one.fault()))
                .map(one ->
                        one.fault().words() + (one.where().isEmpty() ? "" : ", " + one.where()) + ": " + one.reason())
                .findFirst();
    }

    private WoundReadings readings() {
        Map<Half, Estimate> byHalf = new EnumMap<>(Half.class);
        for (var half : railwitness.drivers.winding.Half.values()) {
            read(Hookup.of(Kind.VOLTS, half)).ifPresent(value -> byHalf.put(Half.valueOf(half.name()), value));
        }
        Optional<WoundReadings.Driven> open = Optional.ofNullable(byHalf.get(Half.PRIMARY_A))
                .flatMap(winding -> read(Hookup.of(Kind.RESISTOR))
                        .map(resistor -> new WoundReadings.Driven(winding, resistor, read(Hookup.of(Kind.BOTH)))));
        return new WoundReadings(
                Map.of(),
                Optional.empty(),
                byHalf,
                read(Hookup.of(Kind.PRIMARIES)),
                read(Hookup.of(Kind.SECONDARIES)),
                Optional.empty(),
                open,
                Optional.empty(),
                Estimate.exact(1),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    private Optional<Estimate> read(Hookup hookup) {
        return Optional.ofNullable(volts.get(hookup));
    }
}
