package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bench with one supply and one meter: the person switches resistors and the remote line, and reads a meter. */
class HandsOnBenchTest {
    private static final String BENCH = """
            [bench]
            name = "Bench in the wheelhouse"
            lead_resistance_ohm = 0.020
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "supply"
            highest_A = 40
            accuracy.voltage = { reading_pct = 0.05, offset = 0.010 }
            accuracy.current = { reading_pct = 0.2, offset = 0.020 }
            [[instrument]]
            name = "plus meter"
            kind = "meter"
            port = "plus"
            reads = "plus.voltage"
            range = 100
            accuracy.voltage = { reading_pct = 0.015, range_pct = 0.004 }
            [[hand_read]]
            name = "old multimeter"
            reads = "minus.voltage"
            range = 200
            accuracy = { reading_pct = 0.5, digits = 2, resolution = 0.1 }
            [[resistor_bank]]
            rail = "plus"
            resistances_ohm = [9.2, 12.2, 18.4, 36.7]
            tolerance_pct = 1
            [[resistor_bank]]
            rail = "minus"
            resistances_ohm = [9.2, 12.2, 18.4, 36.7]
            tolerance_pct = 1
            """;

    @TempDir
    static Path folder;

    private static Found found;
    private static String text;

    @BeforeAll
    static void rehearse() throws IOException {
        Path session = folder.resolve("hands.session");
        Said said = Said.by(
                "rehearse",
                "--bench",
                Files.writeString(folder.resolve("bench.toml"), BENCH).toString(),
                "--out",
                session.toString());
        found = Found.in(session);
        text = said.out();
    }

    @Test
    void thePlanIsDoneByHand() {
        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.point("load-sweep", "100 %")
                        .at("/rails/plus/current/value")
                        .asDouble())
                .isCloseTo(4.0, within(0.3));
    }

    /** The resistor's current follows from the rail's voltage, whatever the person meant to draw. */
    @Test
    void currentThroughAResistorComesFromTheRail() {
        var plus = found.point("load-sweep", "50 %").at("/rails/plus");

        assertThat(plus.at("/current/value").asDouble())
                .isCloseTo(plus.at("/voltage/value").asDouble() / 18.4, within(1e-9));
        assertThat(plus.at("/current/u").asDouble()).isPositive();
    }

    /** At 11 V the rail is lower; the resistor is the one that was switched in all the same. */
    @Test
    void theResistorSwitchedInIsTheOneReckonedWith() {
        found.json().get("points").forEach(point -> {
            if (point.get("stage").asText().equals("line-sweep")) {
                var plus = point.at("/rails/plus");
                assertThat(plus.at("/voltage/value").asDouble()
                                / plus.at("/current/value").asDouble())
                        .isCloseTo(18.4, within(1e-9));
                assertThat(point.at("/efficiency/value").asDouble()).isBetween(0.5, 1.0);
            }
        });
        assertThat(found.json().get("contradictions")).isEmpty();
        assertThat(found.json().get("events").toString()).contains("plus: 18.4 ohm");
    }

    /** The resistors go with the readings through a table. */
    @Test
    void theResistorsComeBackFromATable() throws IOException {
        Path tables = folder.resolve("tables");
        Said.by("export", folder.resolve("hands.session").toString(), "--out", tables.toString());
        Path again = folder.resolve("again.session");
        Said.by(
                "import",
                tables.resolve("readings.csv").toString(),
                "--design",
                tables.resolve("sheets/design.toml").toString(),
                "--bench",
                tables.resolve("sheets/bench.toml").toString(),
                "--out",
                again.toString());

        assertThat(Found.in(again).json().get("figures")).isEqualTo(found.json().get("figures"));
    }

    @Test
    void aMeterReadByHandHasItsLastDigitInItsUncertainty() {
        var minus = found.point("load-sweep", "50 %").at("/rails/minus/voltage");

        assertThat(minus.at("/value").asDouble()).isNegative();
        assertThat(minus.at("/u").asDouble()).isGreaterThan(0.1);
    }

    @Test
    void theFindingsSayThatTheInputWasReadAtTheSupply() {
        assertThat(text).contains("read back at the supply");
    }
}
