package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.design.FigureName;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.reporting.findings.SessionFindings;

/** The supply is raised until the unit's own terminals read what the step asks for: slowly, upwards, and never too far. */
class TerminalServoTest {
    private static final double NOMINAL = 13.8;

    @TempDir
    Path folder;

    private final List<StepEntry> entries = new ArrayList<>();
    private final List<String> told = new ArrayList<>();
    private VirtualBench far;
    private SessionFindings found;

    private void run(String hold) {
        String plan = StoppedSession.PLAN
                .replace("[plan]", "[plan]\n" + hold)
                .replace("settle_at_most_s = 0", "settle_at_most_s = 5")
                .replace("loads_pct = [50]", "loads_pct = [50, 100]");
        VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
        Sheets sheets = new Sheets(
                Sheets.demo().design(),
                Sheets.demo().bench(),
                SheetText.of("plan", Sheet.of("plan.toml", plan), PlanReader::plan));
        far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        Path file = folder.resolve("held.session");
        new LiveSession(
                        sheets,
                        scheduler,
                        far.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new RehearsalPerson(scheduler, far),
                        new RunListener() {
                            @Override
                            public void happened(double atSeconds, SessionEvent event) {
                                told.add(event.what() + ": " + event.words());
                            }

                            @Override
                            public void ended(Step step, StepEntry entry) {
                                entries.add(entry);
                            }
                        })
                .run(file, StoppedSession.head());
        found = SessionFindings.of(file);
    }

    private double set(String step) {
        return entries.stream()
                .filter(entry -> entry.step().equals(step) && entry.stage().equals("load-sweep"))
                .findFirst()
                .orElseThrow()
                .inputVolts()
                .orElseThrow();
    }

    private double terminals(String step) {
        return found.findings().points().stream()
                .filter(point -> point.step().equals(step) && point.stage().equals("load-sweep"))
                .findFirst()
                .orElseThrow()
                .input()
                .voltage()
                .value();
    }

    @Test
    void theTerminalsReadNominalAtEachStep() {
        run("hold_input = \"terminals\"");
        for (String step : List.of("50 %", "100 %")) {
            assertThat(terminals(step)).as(step).isCloseTo(NOMINAL, within(0.012));
            assertThat(set(step)).as(step).isBetween(NOMINAL + 0.1, NOMINAL + 0.6);
        }
        assertThat(found.findings().points())
                .filteredOn(point -> point.step().equals("11 V"))
                .singleElement()
                .satisfies(point -> assertThat(point.input().voltage().value()).isCloseTo(11, within(0.01)));
        assertThat(found.findings()
                        .figure(FigureName.RAIL_VOLTAGE, Optional.of("plus"))
                        .orElseThrow()
                        .at())
                .contains("held at 13.80 V")
                .doesNotContain("moved");
    }

    @Test
    void withoutItTheSupplyIsHeld() {
        run("");
        assertThat(set("100 %")).isEqualTo(NOMINAL);
        assertThat(terminals("100 %")).isLessThan(NOMINAL - 0.3);
    }

    /** More is lost on the way than the plan allows: it stays at that bound, says so, and the step is measured. */
    @Test
    void neverBeyondItsBound() {
        run("hold_input = \"terminals\"\nraise_at_most_V = 0.1");
        assertThat(set("100 %")).isCloseTo(NOMINAL + 0.1, within(1e-9));
        assertThat(terminals("100 %")).isLessThan(NOMINAL - 0.2);
        assertThat(told).anyMatch(words -> words.contains("100 %") && words.contains("input not held"));
    }
}
