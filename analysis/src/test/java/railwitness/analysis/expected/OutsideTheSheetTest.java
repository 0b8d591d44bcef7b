package railwitness.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import railwitness.analysis.design.Design;
import railwitness.analysis.reference.ReferenceSet;
import railwitness.analysis.reference.ReferenceSheet.Knowledge;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/**
 * A law over all recordings of the circuit simulator, every set and with every sheet: whatever rail, loss or ripple lies
 * outside what the sheet allows, that very value is among the deviations; and where nothing does, nothing is made up of a
 * sound unit.
 */
@Execution(ExecutionMode.CONCURRENT)
class OutsideTheSheetTest {
    /** Well outside: beyond what is told as a deviation, so that rounding cannot decide. */
    private static final double OUTSIDE = 2.6;

    private record Reading(String what, Optional<String> rail, Estimate measured) {
        String key() {
            return rail.map(name -> name + "." + what).orElse(what);
        }
    }

    @ParameterizedTest
    @EnumSource(Knowledge.class)
    void whatLiesOutsideWhatTheSheetAllowsIsSaid(Knowledge known) {
        int outside = 0;
        for (ReferenceSet.Unit unit : units()) {
            Design design = ReferenceSet.design(unit, known);
            Expectations expectations = Expectations.of(design, unit.points());
            List<Deviation> said = Deviations.of(unit.points(), expectations);
            for (OperatingPoint point : unit.points()) {
                for (Reading reading : readings(point)) {
                    Optional<Estimate> expected = expectations.at(point).value(reading.key());
                    if (expected.isPresent() && isOutside(reading.measured(), expected.get())) {
                        outside++;
                        assertThat(said)
                                .as(unit + " " + known + " " + point.step() + " " + reading)
                                .anyMatch(one -> one.what().equals(reading.what())
                                        && one.rail().equals(reading.rail())
                                        && one.step().equals(point.step()));
                    }
                }
            }
            if (unit.code().equals("sound")) {
                assertThat(said).as(unit + " " + known).isEmpty();
            }
        }
        assertThat(outside).as("values outside with " + known).isGreaterThan(20);
    }

    private static List<ReferenceSet.Unit> units() {
        return Stream.of("building", "last-look", "second-look")
                .flatMap(half -> ReferenceSet.half(half, 1e-3).stream())
                .toList();
    }

    private static List<Reading> readings(OperatingPoint point) {
        Stream<Reading> ofRails = point.rails().entrySet().stream()
                .flatMap(rail -> Stream.concat(
                        Stream.of(new Reading(
                                "voltage",
                                Optional.of(rail.getKey()),
                                rail.getValue().voltage())),
                        rail
                                .getValue()
                                .rippleRms()
                                .map(value -> new Reading("ripple", Optional.of(rail.getKey()), value))
                                .stream()));
        return Stream.concat(ofRails, Stream.of(new Reading(Expected.LOSS, Optional.empty(), point.loss())))
                .toList();
    }

    /** Further off than measured and expected uncertainty together explain, as a difference and as a factor. */
    private static boolean isOutside(Estimate measured, Estimate expected) {
        double m = Math.abs(measured.value());
        double e = Math.abs(expected.value());
        double difference = Math.abs(m - e) / Math.hypot(measured.u(), expected.u());
        double factor = Math.abs(Math.log(m / e)) / Math.hypot(measured.u() / m, expected.u() / e);
        return measured.value() * expected.value() > 0 && Math.min(difference, factor) > OUTSIDE;
    }
}
