package railwitness.logger.recording.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.supply.Figure;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.SessionFindings;

/** Three rails of one transformer, and an auxiliary rail behind its own regulator: each has its own findings. */
class MoreRailsTest {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");

    @TempDir
    Path folder;

    private static String third(String rail) {
        return Sheets.demo().design().text().replace("[connected]", rail + "\n[connected]");
    }

    private static String bench(String rail) {
        return Sheets.demo().bench().text() + """

                [[instrument]]
                name = "%1$s meter"
                kind = "meter"
                port = "%1$s-meter"
                dialect = "scpi-1999"
                reads = "%1$s.voltage"
                range = 100
                accuracy.voltage = { reading_pct = 0.015, range_pct = 0.004, stated_as = "limit" }

                [[instrument]]
                name = "%1$s load"
                kind = "load"
                port = "%1$s-load"
                dialect = "scpi-1999"
                rail = "%1$s"
                reads = "%1$s.current"
                accuracy.current = { reading_pct = 0.05, offset = 0.002, stated_as = "limit" }
                """.formatted(rail);
    }

    private SessionFindings rehearsed(String design, String bench) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = new Sheets(
                SheetText.of("design", Sheet.of("design.toml", design), DesignReader::design),
                SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from),
                SheetText.of(
                        "plan",
                        Sheet.of(
                                "plan.toml",
                                ShortPlan.of(
                                        0.5,
                                        "power-up",
                                        "no-load",
                                        "load-sweep; loads_pct = [25, 50, 100]",
                                        "line-sweep; load_pct = 25; inputs_V = [12.0, 14.4]")),
                        PlanReader::plan));
        VirtualBench far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        Path file = folder.resolve("rails.session");
        new LiveSession(
                        sheets,
                        scheduler,
                        far.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, far),
                        new RunListener() {})
                .run(file, new SessionHead("rails", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""));
        return SessionFindings.of(file);
    }

    private static Map<String, List<Figure>> byRail(SessionFindings findings) {
        return findings.findings().figures().stream()
                .filter(figure -> figure.rail().isPresent())
                .collect(Collectors.groupingBy(figure -> figure.rail().orElseThrow()));
    }

    private static double value(Map<String, List<Figure>> figures, String rail, String label) {
        return figures.get(rail).stream()
                .filter(figure -> figure.label().startsWith(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " is not among "
                        + figures.get(rail).stream().map(Figure::label).toList()))
                .value()
                .value();
    }

    @Test
    void threeCoupledRailsHaveTheSameFiguresEach() {
        SessionFindings findings = rehearsed(third("""
                [[rail]]
                name = "drivers"
                nominal_V = 55
                full_load_A = 1
                secondary_turns = 18
                capacitor_rating_V = 100
                limit_high_V = 70
                limit_low_V = 30
                """), bench("drivers"));
        assertThat(findings.state()).isEqualTo(SessionState.COMPLETE);
        Map<String, List<Figure>> figures = byRail(findings);
        assertThat(figures.keySet()).contains("plus", "minus", "drivers");
        List<String> names = figures.get("plus").stream()
                .map(figure -> figure.label().replace("plus", ""))
                .toList();
        for (String rail : List.of("minus", "drivers")) {
            assertThat(figures.get(rail).stream()
                            .map(figure -> figure.label().replace(rail, ""))
                            .toList())
                    .as(rail)
                    .containsAll(names.stream()
                            .filter(name -> !name.startsWith("ripple"))
                            .toList());
        }
        assertThat(findings.findings().against().causes()).isEmpty();
        assertThat(value(figures, "drivers", "effective turns ratio")).isBetween(4.4, 4.6);
        assertThat(value(figures, "plus", "effective turns ratio")).isBetween(2.95, 3.05);
    }

    /** It stands where its regulator holds it, whatever the load and the other rails do. */
    @Test
    void anAuxiliaryRegulatedRailIsHeldBesideUnregulatedOnes() {
        SessionFindings findings = rehearsed(third("""
                [[rail]]
                name = "aux"
                nominal_V = 12
                full_load_A = 0.5
                secondary_turns = 5
                regulated = true
                capacitor_rating_V = 35
                limit_high_V = 20
                limit_low_V = 6
                """), bench("aux"));
        assertThat(findings.state()).isEqualTo(SessionState.COMPLETE);
        Map<String, List<Figure>> figures = byRail(findings);
        assertThat(figures.keySet()).contains("plus", "minus", "aux");
        assertThat(Math.abs(value(figures, "aux", "load effect"))).isLessThan(1);
        assertThat(value(figures, "plus", "load effect")).isGreaterThan(2);
        assertThat(findings.findings().points().stream()
                        .filter(point -> point.rail("aux").isPresent()))
                .isNotEmpty();
        assertThat(findings.findings().contradictions()).isEmpty();
        assertThat(findings.findings().against().causes()).isEmpty();
    }
}
