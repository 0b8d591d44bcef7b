package railwitness.logger.recording.points;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Trace;

/** A value read by eye is no better than the digits that were read. */
class ReadDigitsTest {
    private static final Channel HEAT_SINK = new Channel("capacitor", Quantity.TEMPERATURE);
    private static final String HAND = """

            [[hand_read]]
            name = "contact thermometer"
            reads = "capacitor.temperature"
            accuracy = { offset = 0.1, stated_as = "limit" }
            """;

    /** The same meter, whose sheet states what its display shows. */
    private static final String STATED = HAND.replace("offset = 0.1", "offset = 0.1, resolution = 0.5");

    private static Trace typed(double... values) {
        return new Trace(HEAT_SINK, values, new long[values.length], new long[values.length], 0, 0);
    }

    private static ChannelEstimates estimates() {
        return estimates(HAND);
    }

    private static ChannelEstimates estimates(String meter) {
        Optional<BenchSheet> bench = Optional.of(
                Sheet.of("bench.toml", Sheets.demo().bench().text() + meter).read(BenchSheet::from));
        return new ChannelEstimates(bench, new InstrumentNames("one", List.of(), bench), new BenchErrors());
    }

    /** Offset 0.1 as a limit and a last digit of 0.1: 0.1 / root 3 and 0.1 / root 12 (GUM 4.3.7, F.2.2.1). */
    @Test
    void theLastDigitIsInItsUncertainty() {
        Estimate read = estimates().mean(typed(41.5), "load-sweep 100 %");
        assertThat(read.u()).isCloseTo(Math.hypot(0.1 / Math.sqrt(3), 0.1 / Math.sqrt(12)), within(1e-9));
    }

    /** 41.0 is kept as 41: what else was read of the same meter tells that it shows tenths. */
    @Test
    void theFinestReadingOfTheSessionTellsTheDisplay() {
        ChannelEstimates estimates = estimates();
        estimates.seen(typed(38.7));
        assertThat(estimates.mean(typed(41), "load-sweep 100 %").u())
                .isCloseTo(Math.hypot(0.1 / Math.sqrt(3), 0.1 / Math.sqrt(12)), within(1e-9));
        assertThat(estimates().mean(typed(41), "load-sweep 100 %").u()).isGreaterThan(0.28);
    }

    /** What the sheet states of the display counts once, however finely or coarsely somebody typed. */
    @Test
    void aStatedResolutionIsTheOnlySource() {
        double u = Math.hypot(0.1 / Math.sqrt(3), 0.5 / Math.sqrt(12));
        assertThat(estimates(STATED).mean(typed(41.5), "load-sweep 100 %").u()).isCloseTo(u, within(1e-9));
        assertThat(estimates(STATED).mean(typed(41), "load-sweep 100 %").u()).isCloseTo(u, within(1e-9));
    }
}
