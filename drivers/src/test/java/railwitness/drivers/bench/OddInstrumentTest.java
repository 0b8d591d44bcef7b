package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;

/** Instruments that do not behave as the usual ones do are either used or refused with the way out. */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(60)
class OddInstrumentTest {
    private static final String SHEET = """
            [bench]
            name = "quay"
            source = "battery"
            [[instrument]]
            name = "volts"
            kind = "meter"
            port = "%s"
            reads = "plus.voltage"
            """;

    @BeforeEach
    void terminals() {
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
    }

    private static Reading reading(OddInstrument far, String more) {
        RealScheduler scheduler = new RealScheduler();
        String toml = SHEET.formatted(far.device()) + more;
        try (Bench bench = Bench.open(
                Sheet.of("bench.toml", toml).read(BenchSheet::from),
                SerialLine::open,
                scheduler,
                WorkerMaker.threaded(scheduler),
                ExchangeLog.none())) {
            return bench.meters().get(0).instrument().poll().readings().get(0);
        }
    }

    private static void assertReads(OddInstrument instrument, String more) {
        try (OddInstrument far = instrument.on()) {
            assertThat(((Measured) reading(far, more)).value()).isEqualTo(36.5);
        }
    }

    @Test
    void repliesEndedByCarriageReturnAloneAreFoundOut() {
        assertReads(OddInstrument.meter().ending("\r"), "");
    }

    @Test
    void anInstrumentThatNeedsThreeSecondsToWakeIsWaitedFor() {
        assertReads(OddInstrument.meter().waking(3000), "");
    }

    @Test
    void bytesFiftyMillisecondsApartMakeAnAnswer() {
        assertReads(OddInstrument.meter().bytesApart(50), "");
    }

    @Test
    void anEchoIsNoAnswer() {
        assertReads(OddInstrument.meter().echoing(), "");
        assertReads(OddInstrument.meter().echoing().ending("\r\n"), "");
    }

    @Test
    void whatCameIsShownWithTheKeysThatHelp() {
        try (OddInstrument far = OddInstrument.meter().ending("\r").on()) {
            LineException e = catchThrowableOfType(LineException.class, () -> reading(far, "terminator = \"LF\"\n"));
            assertThat(e)
                    .hasMessageContaining("what came is 'Copperyard,DM-9,4,2.0<CR>")
                    .hasMessageContaining("terminator = \"CR\"")
                    .hasMessageContaining("answer_within_s");
        }
    }

    @Test
    void aSilentPortNamesTheKeysToo() {
        try (OddInstrument far = new OddInstrument(message -> null).on()) {
            LineException e = catchThrowableOfType(LineException.class, () -> reading(far, ""));
            assertThat(e).hasMessageContaining("answer_within_s").hasMessageContaining("terminator");
            assertThat(e.getMessage().lines()).hasSize(1);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {10_000, 60_000, 3_000_000})
    void repliesWithoutMeasureCostLittleTimeAndFewWords(int length) {
        OddInstrument odd = new OddInstrument(message -> switch (message) {
            case "*IDN?" -> "Copperyard,DM-9,4,2.0";
            case "READ?" -> "1".repeat(length);
            default -> null;
        });
        try (OddInstrument far = odd.on()) {
            long begun = System.nanoTime();
            LineException e = catchThrowableOfType(LineException.class, () -> reading(far, ""));
            assertThat(e).as("%d digits are no reading", length).isNotNull();
            assertThat(e.getMessage().length()).isLessThan(1000);
            assertThat((System.nanoTime() - begun) / 1e9).isLessThan(15);
        }
    }

    @Test
    void aReadingWithoutMeasureLaterIsMissing() {
        int[] asked = {0};
        OddInstrument odd = new OddInstrument(message -> switch (message) {
            case "*IDN?" -> "Copperyard,DM-9,4,2.0";
            case "READ?" -> asked[0]++ == 0 ? "1.5" : "1".repeat(10_000);
            default -> null;
        });
        try (OddInstrument far = odd.on()) {
            Reading reading = reading(far, "");
            assertThat(reading).isInstanceOf(Missing.class);
            assertThat(((Missing) reading).reason()).hasSizeLessThan(200);
        }
    }
}
