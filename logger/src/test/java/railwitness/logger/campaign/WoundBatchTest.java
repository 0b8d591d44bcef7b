package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonText;
import railwitness.logger.reporting.findings.SessionFindings;

/** A batch of transformers held against each other, and one that is read while it cools. */
@Timeout(120)
class WoundBatchTest {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final Path SAMPLE = Path.of("../sessions-sample/toroid");

    private static final String LOADS = """

            [[instrument]]
            name = "plus load"
            kind = "load"
            port = "plus-load"
            dialect = "scpi-1999"
            rail = "plus"
            reads = "plus.current"
            accuracy.current = { reading_pct = 0.05, offset = 0.002, stated_as = "limit" }

            [[instrument]]
            name = "minus load"
            kind = "load"
            port = "minus-load"
            dialect = "scpi-1999"
            rail = "minus"
            reads = "minus.current"
            accuracy.current = { reading_pct = 0.05, offset = 0.002, stated_as = "limit" }
            """;

    @TempDir
    Path folder;

    /** Eight of one batch, the fifth wound of wire too thin: the control chart of its resistance names it, and no other. */
    @Test
    void oddTransformerOfABatchIsNamed() {
        List<Path> batch = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Path file = folder.resolve("t" + i + ".session");
            Optional<String> fault = i == 4 ? Optional.of("thin-wire@secondary=1.9") : Optional.empty();
            WoundCase.alone(400 + i).rehearsed(fault, file, "T-2" + i);
            batch.add(file);
        }
        Comparison comparison = Comparison.of(batch);
        String text = ComparisonText.of(comparison);
        assertThat(comparison.unlike().keySet()).as("seeds 400 to 407").containsExactly(4);
        assertThat(text)
                .contains("E is unlike its sisters (serial T-24):")
                .contains(
                        "secondary A resistance",
                        "turns ratio, half A",
                        "magnetising inductance",
                        "leakage inductance");
    }

    /** Half an hour at full load, then the output off and the winding read eight times while it cools. */
    @Test
    void hotWindingIsLedBackToTheMomentOfSwitchingOff() throws IOException {
        Sheets sheets = new Sheets(
                Sheets.design(SAMPLE.resolve("design.toml")),
                Sheets.bench("bench.toml", Files.readString(SAMPLE.resolve("bench.toml")) + LOADS),
                Sheets.plan("plan.toml", """
                        [plan]
                        name = "hot toroid"
                        settle_at_most_s = 8
                        average_s = 3
                        [[stage]]
                        kind = "transformer"
                        measure = ["resistances"]
                        [[stage]]
                        kind = "power-up"
                        current_limit_A = 5
                        [[stage]]
                        kind = "hold"
                        load_pct = 100
                        duration_s = 1800
                        [[stage]]
                        kind = "transformer-cooling"
                        """));
        VirtualScheduler scheduler = new VirtualScheduler(START);
        VirtualBench bench = FixtureMaker.bench(sheets, List.of(), 5, scheduler::nowNanos);
        double[] truth = {Double.NaN};
        RunListener listener = new RunListener() {
            @Override
            public void happened(double at, SessionEvent event) {
                if (event.words().contains("the winding cools from now on")) {
                    truth[0] = bench.readByHand(Channel.of("transformer.temperature"));
                }
            }
        };
        Path file = folder.resolve("hot.session");
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, bench),
                        listener)
                .run(file, new SessionHead("hot", START, ZoneOffset.UTC, true, "test", "", "Foredeck", "T-17", "new"));
        SessionFindings found = SessionFindings.of(file);
        Figure hot = found.findings()
                .figure(FigureName.WINDING_TEMPERATURE, Optional.empty())
                .orElseThrow(
                        () -> new AssertionError(found.findings().notFound().toString()));
        double u = hot.value().coverage(0.95).expanded();
        System.out.println("winding " + hot.value() + ", truly " + truth[0] + ", U " + u);
        assertThat(truth[0]).as("it did warm up").isGreaterThan(25);
        assertThat(hot.value().value()).isCloseTo(truth[0], within(u));
        assertThat(u).isLessThan(8);
    }
}
