package railwitness.analysis.transformer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Transformers alone on the bench of a circuit simulator (coupled inductors, ngspice; {@code simulated-coil.py} beside the
 * table made it): what its meters read leads back to its turns, inductance and leakage.
 */
class SimulatedCoilTest {
    static List<Map<String, Double>> coils() throws IOException {
        try (InputStream in = SimulatedCoilTest.class.getResourceAsStream("simulated-coil.csv")) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .toList();
            String[] names = lines.get(0).split(",");
            return lines.stream()
                    .skip(1)
                    .map(line -> {
                        String[] cells = line.split(",");
                        Map<String, Double> row = new HashMap<>();
                        for (int i = 0; i < names.length; i++) {
                            row.put(names[i], Double.valueOf(cells[i]));
                        }
                        return row;
                    })
                    .toList();
        }
    }

    private static Estimate at(Map<String, Double> coil, String name) {
        return Estimate.exact(coil.get(name));
    }

    private static WoundReport report(Map<String, Double> coil) {
        WoundReadings readings = new WoundReadings(
                Map.of(),
                Optional.empty(),
                Map.of(
                        Half.PRIMARY_A, at(coil, "pa"),
                        Half.PRIMARY_B, at(coil, "pb"),
                        Half.SECONDARY_A, at(coil, "sa"),
                        Half.SECONDARY_B, at(coil, "sb")),
                Optional.of(at(coil, "pp")),
                Optional.of(at(coil, "ss")),
                Optional.of(at(coil, "one")),
                Optional.of(
                        new WoundReadings.Driven(at(coil, "pa"), at(coil, "resistor"), Optional.of(at(coil, "both")))),
                Optional.of(new WoundReadings.Driven(
                        at(coil, "shorted_pa"), at(coil, "shorted_resistor"), Optional.empty())),
                at(coil, "hertz"),
                Optional.of(Estimate.exact(4.7)),
                Optional.empty(),
                Optional.empty(),
                List.of());
        int turns = coil.get("primary_turns").intValue();
        WoundAsMeant meant = new WoundAsMeant(
                turns,
                coil.get("secondary_turns").intValue(),
                coil.get("primary_ohm"),
                coil.get("secondary_ohm"),
                coil.get("henries_one") * turns * turns,
                Double.POSITIVE_INFINITY,
                0);
        return WoundReport.of(Optional.of(meant), readings, Idle.none());
    }

    @ParameterizedTest
    @MethodSource("coils")
    void metersLeadBackToTheTransformer(Map<String, Double> coil) {
        WoundReport report = report(coil);
        double ratio = coil.get("secondary_turns") / coil.get("primary_turns");
        double turns = coil.get("primary_turns");
        double henries = coil.get("henries_one") * turns * turns;
        double leak = 1.5 * leakage(coil);
        System.out.printf(
                java.util.Locale.ROOT,
                "simulated %.0f : %.0f: ratio %+.2f %%, inductance %+.2f %%, leakage %+.2f %%%n",
                turns,
                coil.get("secondary_turns"),
                100 * (report.value(FigureName.HALF_A_RATIO).orElseThrow().value() / ratio - 1),
                100
                        * (report.value(FigureName.MAGNETISING_INDUCTANCE)
                                                .orElseThrow()
                                                .value()
                                        / henries
                                - 1),
                100 * (report.value(FigureName.LEAKAGE_INDUCTANCE).orElseThrow().value() / leak - 1));
        assertThat(report.value(FigureName.HALF_A_RATIO).orElseThrow().value()).isCloseTo(ratio, within(0.003 * ratio));
        assertThat(report.value(FigureName.MAGNETISING_INDUCTANCE).orElseThrow().value())
                .isCloseTo(henries, within(0.02 * henries));
        assertThat(report.value(FigureName.LEAKAGE_INDUCTANCE).orElseThrow().value())
                .isCloseTo(leak, within(0.01 * leak));
        assertThat(report.windings().get(Half.SECONDARY_B).turns().orElseThrow().value())
                .isCloseTo(coil.get("secondary_turns"), within(0.01));
        assertThat(report.primary()).isEqualTo(Ratio.Polarity.ALIKE);
        assertThat(report.secondary()).isEqualTo(Ratio.Polarity.ALIKE);
        assertThat(report.suspicions()).isEmpty();
    }

    /** The primary half's own leakage, and those of two shorted secondary halves side by side, by the square of the turns. */
    private static double leakage(Map<String, Double> coil) {
        return coil.get("leak_H");
    }
}
