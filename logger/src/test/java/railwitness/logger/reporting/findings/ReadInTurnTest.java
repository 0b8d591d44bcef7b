package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.sheet.Sheets;

class ReadInTurnTest {
    private static ReadInTurn of(String bench) {
        return ReadInTurn.of(
                Sheet.of(Path.of("..", "sessions-sample", "benches", bench)).read(BenchSheet::from));
    }

    @Test
    void whatEveryInstrumentReadsBySerialLineIsReadTogether() {
        ReadInTurn demo = ReadInTurn.of(Sheets.demo().bench().content());
        assertThat(demo.any()).isFalse();
        assertThat(demo.inTurn()).isEmpty();
        assertThat(demo.words())
                .isEqualTo("All readings of an operating point were taken together, in the same rounds");
        assertThat(demo.together())
                .hasToString(
                        "[heatsink.temperature, input.current, input.voltage, minus.current,"
                                + " minus.ripple, minus.voltage, plus.current, plus.ripple, plus.voltage, supply.current, supply.voltage]");
    }

    @Test
    void oneMeterReadsInTurnAndSoDoesTheClamp() {
        ReadInTurn one = of("one-meter-and-knobs.toml");
        assertThat(one.together()).isEmpty();
        assertThat(one.moved()).hasSize(1);
        assertThat(one.words())
                .isEqualTo("Read in turn by one meter that was moved, while the point stood: plus voltage and ripple,"
                        + " minus voltage and ripple, input voltage; read in turn by eye, while the point stood: input"
                        + " current");
        assertThat(one.inTurn()).hasSize(6);
    }
}
