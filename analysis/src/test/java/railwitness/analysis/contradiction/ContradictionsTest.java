package railwitness.analysis.contradiction;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;
import railwitness.analysis.supply.InputPoint;
import railwitness.analysis.supply.InputSource;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RailPoint;
import railwitness.analysis.uncertainty.Estimate;

/** Each kind of what cannot be, from readings made by hand; the sound ones are believed. */
class ContradictionsTest {
    private static final double[] LOADS = {0, 1, 2, 3, 4};

    /** Channels of one step by hand: 13.8 V in, 37 V out, 85 % efficiency. */
    private static Map<String, Double> step(double amps) {
        Map<String, Double> read = new LinkedHashMap<>();
        double rail = 40 - 0.7 * amps;
        double watts = 2 * rail * amps / 0.85 + 5;
        read.put("input.voltage", 13.8);
        read.put("input.current", watts / 13.8);
        read.put("supply.current", watts / 13.8);
        read.put("plus.voltage", rail);
        read.put("plus.current", amps);
        read.put("minus.voltage", -rail);
        read.put("minus.current", amps);
        return read;
    }

    private static Testimony testimony(double set, Map<String, Double> read, Map<String, Estimate> resistors) {
        Map<String, RailPoint> rails = new LinkedHashMap<>();
        for (String rail : List.of("plus", "minus")) {
            Estimate volts = Estimate.exact(read.get(rail + ".voltage"));
            Estimate amps = Estimate.exact(Math.abs(read.get(rail + ".current")));
            rails.put(rail, new RailPoint(volts, amps, volts.abs().times(amps), Optional.empty()));
        }
        Estimate volts = Estimate.exact(read.get("input.voltage"));
        Estimate amps = Estimate.exact(read.get("input.current"));
        OperatingPoint point = new OperatingPoint(
                "load-sweep",
                set + " A",
                9,
                0,
                5,
                true,
                new InputPoint(volts, amps, volts.times(amps)),
                InputSource.TERMINALS,
                OptionalDouble.of(13.8),
                rails,
                Map.of());
        Map<String, Mean> means = new LinkedHashMap<>();
        read.forEach((channel, value) -> means.put(channel, new Mean(Estimate.exact(value), true)));
        return new Testimony(point, means, Map.of("plus", set, "minus", set), resistors);
    }

    private static Set<String> codes(BiConsumer<Double, Map<String, Double>> wrong) {
        List<Testimony> all = new ArrayList<>();
        for (double load : LOADS) {
            Map<String, Double> read = step(load);
            wrong.accept(load, read);
            all.add(testimony(load, read, Map.of()));
        }
        return codes(all);
    }

    private static Set<String> codes(List<Testimony> all) {
        Set<String> codes = new TreeSet<>();
        Contradictions.of(Optional.empty(), new Witnesses(all, true, OptionalDouble.of(40)))
                .forEach(one -> codes.add(one.code().word()));
        return codes;
    }

    @Test
    void soundReadingsAreBelieved() {
        assertThat(codes((load, read) -> {})).isEmpty();
    }

    @Test
    void aRailOfTheWrongSignIsPolarity() {
        assertThat(codes((load, read) -> read.computeIfPresent("plus.voltage", (k, v) -> -v)))
                .contains("polarity");
    }

    @Test
    void anInputCurrentBelowZeroIsNegativeInput() {
        assertThat(codes((load, read) -> read.computeIfPresent("input.current", (k, v) -> -v)))
                .contains("negative-input");
    }

    @Test
    void aMeterThatHangsIsFrozen() {
        assertThat(codes((load, read) -> read.put("input.current", 0.4))).contains("frozen");
    }

    @Test
    void twoThatSeeOneCurrentDisagree() {
        assertThat(codes((load, read) -> read.computeIfPresent("supply.current", (k, v) -> 1.3 * v)))
                .contains("instruments-disagree");
    }

    @Test
    void halfTheInputCurrentIsMorePowerOutThanIn() {
        assertThat(codes((load, read) -> {
                    read.computeIfPresent("input.current", (k, v) -> v / 2);
                    read.remove("supply.current");
                }))
                .contains("power-balance");
    }

    @Test
    void loadsInEachOthersPlaceAreExchanged() {
        List<Testimony> all = new ArrayList<>();
        for (double load : LOADS) {
            Map<String, Double> read = step(load);
            read.put("minus.current", load / 4);
            Testimony as = testimony(load, read, Map.of());
            all.add(new Testimony(as.point(), as.means(), Map.of("plus", load / 4, "minus", load), Map.of()));
        }
        assertThat(codes(all)).contains("exchanged-leads");
    }

    @Test
    void anotherResistorThanTypedDisagreesWithTheMeter() {
        Map<String, Double> read = step(2);
        assertThat(codes(List.of(testimony(2, read, Map.of("plus", Estimate.exact(4))))))
                .contains("instruments-disagree");
        assertThat(codes(List.of(testimony(2, read, Map.of("plus", Estimate.exact(2))))))
                .isEmpty();
    }

    @Test
    void oneWildReadingInAnAverageIsScattered() {
        Testimony sound = testimony(2, step(2), Map.of());
        Map<String, Mean> means = new LinkedHashMap<>(sound.means());
        means.put("input.voltage", new Mean(Estimate.exact(13.8), false, 13.8, 138));
        Testimony wild = new Testimony(sound.point(), means, sound.setAmps(), Map.of());
        assertThat(codes(List.of(wild))).containsExactly("scattered");
        means.put("input.voltage", new Mean(Estimate.exact(13.8), false, 13.8, 13.9));
        assertThat(codes(List.of(new Testimony(sound.point(), means, sound.setAmps(), Map.of()))))
                .isEmpty();
    }
}
