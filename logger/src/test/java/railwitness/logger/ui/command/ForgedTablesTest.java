package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Recordings from a circuit simulator with something wrong with their bench, imported with nothing but the design sheet:
 * no accuracy, no set point, no second instrument. Source of the second: {@code simulate.py demo/design.toml
 * simulated-unit-11.csv --unit 11}, ngspice 39.
 */
class ForgedTablesTest {
    private static final String[] INPUT = {"input.voltage_V", "input.current_A"};

    @TempDir
    Path folder;

    /** Columns by name, row by row. */
    private record Rows(List<String> head, List<String[]> cells) {
        static Rows of(String text) {
            List<String[]> cells = new ArrayList<>();
            List<String> lines = text.lines().toList();
            lines.stream().skip(1).forEach(line -> cells.add(line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)")));
            return new Rows(List.of(lines.get(0).split(",")), cells);
        }

        double at(int row, String column) {
            return Double.parseDouble(cells.get(row)[head.indexOf(column)]);
        }

        void put(int row, String column, double value) {
            cells.get(row)[head.indexOf(column)] = Double.toString(value);
        }

        void scale(String column, double by) {
            for (int row = 0; row < cells.size(); row++) {
                put(row, column, by * at(row, column));
            }
        }

        void exchange(String one, String other) {
            for (int row = 0; row < cells.size(); row++) {
                double kept = at(row, one);
                put(row, one, at(row, other));
                put(row, other, kept);
            }
        }

        void freeze(String column, int from) {
            for (int row = from; row < cells.size(); row++) {
                put(row, column, at(from, column));
            }
        }

        String text() {
            StringBuilder text = new StringBuilder(String.join(",", head)).append('\n');
            cells.forEach(row -> text.append(String.join(",", row)).append('\n'));
            return text.toString();
        }
    }

    private Path table(String source) throws IOException {
        Path file = folder.resolve("readings.csv");
        if (source.equals("reference")) {
            return ReferenceConverter.table().asTable(file);
        }
        try (var in = ForgedTablesTest.class.getResourceAsStream("/railwitness/logger/reference/" + source)) {
            return Files.write(file, in.readAllBytes());
        }
    }

    private Said imported(Path table) throws IOException {
        Path session = folder.resolve("imported.session");
        Files.deleteIfExists(session);
        Said said = Said.by(
                "import",
                table.toString(),
                "--design",
                "../sessions-sample/demo/design.toml",
                "--out",
                session.toString());
        assertThat(said.err()).isEmpty();
        return Said.by("findings", session.toString(), "--json");
    }

    private static Set<String> codes(Said said) {
        Set<String> codes = new TreeSet<>();
        said.json()
                .get("contradictions")
                .forEach(one -> codes.add(one.get("code").asText()));
        return codes;
    }

    private static Stream<Arguments> forgeries() {
        return Stream.of("reference", "simulated-unit-11.csv")
                .flatMap(source -> Stream.of(
                        forged(source, "polarity", "plus reversed", (rows, n) -> rows.scale("plus.voltage_V", -1)),
                        forged(source, "polarity", "both reversed", (rows, n) -> {
                            rows.scale("plus.voltage_V", -1);
                            rows.scale("minus.voltage_V", -1);
                        }),
                        forged(source, "negative-input", "shunt reversed", (rows, n) -> rows.scale(INPUT[1], -1)),
                        forged(source, "negative-input", "input reversed", (rows, n) -> rows.scale(INPUT[0], -1)),
                        forged(source, "polarity", "plus load reversed", (rows, n) -> rows.scale("plus.current_A", -1)),
                        forged(source, "power-balance", "half the current", (rows, n) -> rows.scale(INPUT[1], 0.5)),
                        forged(source, "power-balance", "loads by 1.3", (rows, n) -> {
                            rows.scale("plus.current_A", 1.3);
                            rows.scale("minus.current_A", 1.3);
                        }),
                        forged(
                                source,
                                "exchanged-leads",
                                "input meters",
                                (rows, n) -> rows.exchange(INPUT[0], INPUT[1])),
                        forged(
                                source,
                                "exchanged-leads",
                                "rails",
                                (rows, n) -> rows.exchange("plus.voltage_V", "minus.voltage_V")),
                        forged(
                                source,
                                "exchanged-leads",
                                "input and plus",
                                (rows, n) -> rows.exchange(INPUT[0], "plus.voltage_V")),
                        forged(source, "frozen", "input current", (rows, n) -> rows.freeze(INPUT[1], 0)),
                        forged(source, "frozen", "input current later", (rows, n) -> rows.freeze(INPUT[1], 2)),
                        forged(source, "frozen", "input voltage", (rows, n) -> rows.freeze(INPUT[0], 0)),
                        forged(source, "frozen", "plus", (rows, n) -> rows.freeze("plus.voltage_V", 1)),
                        forged(source, "frozen", "minus current", (rows, n) -> rows.freeze("minus.current_A", 1))));
    }

    private static Arguments forged(String source, String code, String name, BiConsumer<Rows, Integer> how) {
        return Arguments.of(source, code, name, how);
    }

    @ParameterizedTest(name = "{0}: {2}")
    @MethodSource("forgeries")
    void whatCannotBeIsNamedAndNeverFit(String source, String code, String name, BiConsumer<Rows, Integer> how)
            throws IOException {
        Path table = table(source);
        Rows rows = Rows.of(Files.readString(table, StandardCharsets.UTF_8));
        how.accept(rows, 0);
        Said said = imported(Files.writeString(table, rows.text()));

        assertThat(codes(said)).as(said.out()).contains(code);
        assertThat(said.json().get("verdict").asText()).isNotEqualTo("fit");
        assertThat(said.json().get("contradictions").get(0).get("check").asText())
                .isNotBlank();
        Said text = Said.by("findings", folder.resolve("imported.session").toString());
        assertThat(text.out()).startsWith("CONTRADICTION").doesNotContain("\nFIT");
    }

    @ParameterizedTest
    @MethodSource("sources")
    void theRecordingItselfIsBelieved(String source) throws IOException {
        assertThat(codes(imported(table(source)))).isEmpty();
    }

    private static Stream<String> sources() {
        return Stream.of("reference", "simulated-unit-11.csv");
    }

    /** Faults change much, and nothing of it is impossible. */
    @Test
    void faultyUnitsAreNotAccused() throws IOException {
        ReferenceConverter reference = ReferenceConverter.table();
        for (String fault : Set.of("fault_a", "fault_b", "fault_c", "fault_c2", "fault_d", "fault_d2")) {
            if (reference.rows().containsKey(fault + "_100")) {
                assertThat(codes(imported(reference.asTable(folder.resolve("fault.csv"), fault))))
                        .as(fault)
                        .isEmpty();
            }
        }
    }

    @Test
    void halfTheInputCurrentGivesNoEfficiency() throws IOException {
        Path table = table("reference");
        Rows rows = Rows.of(Files.readString(table, StandardCharsets.UTF_8));
        rows.scale(INPUT[1], 0.5);
        Said said = imported(Files.writeString(table, rows.text()));

        Found found = new Found(said.json());
        assertThat(found.find("average efficiency", null)).isEmpty();
        assertThat(found.find("no-load input power", null)).isEmpty();
        assertThat(found.point("load-sweep", "100 %").get("efficiency").isNull())
                .isTrue();
        said.json().get("verdicts").forEach(verdict -> {
            if (verdict.get("figure").asText().contains("efficiency")) {
                assertThat(verdict.get("outcome").asText()).isEqualTo("not judged");
                assertThat(verdict.get("reason").asText()).contains("more power comes out than goes in");
            }
        });
    }
}
