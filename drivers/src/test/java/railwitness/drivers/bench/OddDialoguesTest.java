package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import railwitness.drivers.instrument.Meter;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.scpi.ExchangeText;
import railwitness.drivers.scpi.LoggedInstrument;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.VirtualScheduler;

/**
 * Dialogues of instruments that half obey the standard, in the form of the exchange log, each replayed as the instrument:
 * on the virtual clock, or behind a real port where its bytes and their times matter. A head line {@code #! key: value} says how it sends ({@code ends}, {@code apart}, {@code echo}, {@code wire}), what
 * its dialect adds ({@code dialect}), and what one question after the other finds.
 */
@Execution(ExecutionMode.CONCURRENT)
@Timeout(60)
class OddDialoguesTest {
    private static final Path FOLDER = Path.of("src/test/resources/railwitness/drivers/bench/dialogues");
    private static final String SHEET = """
            [bench]
            name = "quay"
            source = "battery"
            [[instrument]]
            name = "volts"
            kind = "meter"
            port = "%s"
            reads = "plus.voltage"
            answer_within_s = 0.4
            """;
    private static final String DIALECT = """
            about = "of one dialogue"
            identity = ".*"
            terminator = "LF"
            [common]
            remote = []
            reset = ["*RST", "*CLS"]
            error = "SYST:ERR?"
            [meter]
            read = "READ?"
            %s
            [meter.voltage]
            set_up = ["CONF:VOLT:DC {range}"]
            """;

    @TempDir
    Path folder;

    static Stream<String> dialogues() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString().replace(".txt", "")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("dialogues")
    void eachReadingIsItsOwnOrNone(String name) throws IOException {
        String text = Files.readString(FOLDER.resolve(name + ".txt"));
        List<String> wanted = List.of(head(text, "finds").orElseThrow().split("; "));
        LoggedInstrument logged = new LoggedInstrument(ExchangeText.read("volts", text));
        if (!onWire(text)) {
            VirtualScheduler clock = new VirtualScheduler(Instant.EPOCH);
            check(
                    wanted,
                    SHEET.formatted("M") + dialect(text),
                    sheet -> Bench.open(
                            sheet,
                            port -> new PeerLine("M", logged, clock),
                            clock,
                            WorkerMaker.inline(clock),
                            ExchangeLog.none()));
            return;
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        try (OddInstrument far = sending(text, logged).on()) {
            RealScheduler scheduler = new RealScheduler();
            check(
                    wanted,
                    SHEET.formatted(far.device()) + dialect(text),
                    sheet -> Bench.open(
                            sheet, SerialLine::open, scheduler, WorkerMaker.threaded(scheduler), ExchangeLog.none()));
        }
    }

    /** What is only to be seen in bytes and their times needs a real port; for all else the virtual clock does. */
    private static boolean onWire(String text) {
        return Stream.of("ends", "apart", "echo", "wire")
                .anyMatch(key -> head(text, key).isPresent());
    }

    private static void check(List<String> wanted, String toml, Function<BenchSheet, Bench> opener) {
        Supplier<Bench> open = () -> opener.apply(Sheet.of("bench.toml", toml).read(BenchSheet::from));
        if (wanted.get(0).startsWith("refused: ")) {
            assertThat(refusal(open)).contains(wanted.get(0).substring("refused: ".length()));
        } else {
            assertThat(readings(open, wanted.size())).isEqualTo(wanted);
        }
    }

    private static OddInstrument sending(String text, LoggedInstrument logged) {
        OddInstrument odd = new OddInstrument(message -> logged.hear(message)
                .reply()
                .map(bytes -> new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1))
                .orElse(null));
        head(text, "ends").ifPresent(end -> odd.ending(end.replace("\\r", "\r").replace("\\n", "\n")));
        head(text, "apart").ifPresent(millis -> odd.bytesApart(Long.parseLong(millis)));
        head(text, "echo").ifPresent(yes -> odd.echoing());
        return odd;
    }

    private String dialect(String text) throws IOException {
        Optional<String> more = head(text, "dialect");
        if (more.isEmpty()) {
            return "";
        }
        Path file = folder.resolve("own.toml");
        Files.writeString(file, DIALECT.formatted(more.get().replace("\\n", "\n")));
        return "dialect = \"" + file + "\"\n";
    }

    private static Optional<String> head(String text, String key) {
        return text.lines()
                .filter(line -> line.startsWith("#! " + key + ": "))
                .map(line -> line.substring(key.length() + 5))
                .findFirst();
    }

    private static List<String> readings(Supplier<Bench> open, int count) {
        List<String> found = new ArrayList<>();
        try (Bench bench = open.get()) {
            Meter meter = bench.meters().get(0).instrument();
            for (int i = 0; i < count; i++) {
                found.add(words(meter.poll().readings().get(0)));
            }
        }
        return found;
    }

    private static String words(Reading reading) {
        if (reading instanceof Measured measured) {
            String value = Double.toString(measured.value());
            return value.endsWith(".0") ? value.substring(0, value.length() - 2) : value;
        }
        return reading instanceof Overload ? "overload" : "missing";
    }

    private static String refusal(Supplier<Bench> open) {
        try (Bench bench = open.get()) {
            return "not refused: " + bench.meters().get(0).instrument().identity();
        } catch (LineException refused) {
            assertThat(refused.getMessage().lines()).hasSize(1);
            return refused.getMessage();
        }
    }
}
