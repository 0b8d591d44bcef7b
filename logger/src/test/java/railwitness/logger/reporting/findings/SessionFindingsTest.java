package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;

/** A whole session on the virtual bench, and what is said of it. */
class SessionFindingsTest {
    @TempDir
    static Path folder;

    private static SessionFindings findings;
    private static JsonNode json;

    @BeforeAll
    static void record() throws IOException {
        Sheets sheets = Sheets.demo();
        findings = SessionFindings.of(
                Rehearsed.session(folder.resolve("0412.session"), sheets, FixtureMaker.specimen(sheets)));
        json = new ObjectMapper().readTree(FindingsJson.of(findings));
    }

    @Test
    void budgetNamesTheErrorsOfTheMetersInTheirOwnUnits() {
        String budget = BudgetText.of(findings.figures("load effect", Optional.of("plus")));
        assertThat(budget)
                .contains("gain of plus meter")
                .contains("rectangular")
                .contains("k = ")
                .contains("for 95 %");
        assertThat(budget.lines().filter(line -> line.startsWith("gain of plus meter")))
                .singleElement()
                .asString()
                .contains("8.660e-05"); // 0.015 % of the reading over the root of 3
    }

    @Test
    void contributionsOfEveryFigureAddInSquareToItsUncertainty() {
        assertThat(json.get("figures")).hasSizeGreaterThan(20).allSatisfy(figure -> {
            double squares = 0;
            for (JsonNode part : figure.get("contributions")) {
                squares += Math.pow(part.get("u").asDouble(), 2);
            }
            assertThat(Math.sqrt(squares))
                    .isCloseTo(figure.get("u").asDouble(), within(1e-9 + 1e-9 * Math.sqrt(squares)));
            assertThat(figure.get("U").asDouble())
                    .isCloseTo(
                            figure.get("k").asDouble() * figure.get("u").asDouble(),
                            within(1e-12 + 1e-9 * figure.get("U").asDouble()));
            assertThat(figure.get("k_from").asText()).isNotBlank();
        });
    }

    @Test
    void timeToSettleStandsWithEveryPoint() {
        assertThat(json.get("points"))
                .allSatisfy(
                        point -> assertThat(point.get("waited_s").asDouble()).isBetween(1.0, 9.0));
    }

    @Test
    void aFigureThatWasNotFoundIsRefusedWithItsReasonAndThoseThereAre() {
        assertThatThrownBy(() -> findings.figures("drop-out voltage", Optional.empty()))
                .hasMessageContaining("the rails still stood")
                .hasMessageContaining("found are: step-up slope, ")
                .hasMessageNotContaining("\n");
    }

    @Test
    void anUnknownFigureIsRefusedWithAllNames() {
        assertThatThrownBy(() -> findings.figures("dropout", Optional.empty()))
                .hasMessageContaining("dropout")
                .hasMessageContaining("drop-out voltage");
    }

    @Test
    void anUnknownRailIsRefusedWithThoseThereAre() {
        assertThatThrownBy(() -> findings.figures("ripple", Optional.of("middle")))
                .hasMessageContaining("middle")
                .hasMessageContaining("plus, minus");
    }

    @Test
    void withoutARailTheBudgetIsThatOfEveryRail() {
        assertThat(findings.figures("ripple", Optional.empty())).hasSize(2);
    }

    @Test
    void everyKeyOfTheJsonIsDocumented() throws IOException {
        Set<String> keys = new TreeSet<>();
        collect(json, keys);
        keys.removeAll(Set.of("plus", "minus", "heatsink"));
        String document = Files.readString(Path.of("docs/findings.md"));
        assertThat(keys).hasSizeGreaterThan(50).allSatisfy(key -> assertThat(document)
                .contains("\"" + key + "\""));
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.fieldNames().forEachRemaining(key -> keys.add(key.replaceFirst("^(plus|minus)\\.", "RAIL.")));
        node.forEach(child -> collect(child, keys));
    }
}
