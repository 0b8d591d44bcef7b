package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.findings.FindingsText;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.safety.guardian.GuardianException;

/** A bench whose ports no guardian can open: those of the virtual bench, which are no devices. */
class WithoutGuardianTest {
    private static final Instant START = Instant.parse("2026-11-25T10:00:00Z");
    private static final String PLAN = """
            [plan]
            settle_at_most_s = 0
            average_s = 0.5
            [[stage]]
            kind = "power-up"
            current_limit_A = 5
            [[stage]]
            kind = "no-load"
            """;

    @TempDir
    Path folder;

    @Test
    void withoutAGuardianThereIsNoPower() {
        Path file = folder.resolve("refused.session");
        assertThatThrownBy(() -> run(file, "", scheduler -> {}))
                .isInstanceOf(GuardianException.class)
                .hasMessageContaining("without_guardian under [bench]");
        SessionFindings findings = SessionFindings.of(file);
        assertThat(findings.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(FindingsText.of(findings)).contains("no power: the guardian did not start");
    }

    @Test
    void acceptedInWordsTheRunGoesOnAndSaysSo() {
        Path file = folder.resolve("accepted.session");
        RunEnd end = run(file, "a person stands by", scheduler -> {});
        assertThat(end.state()).isEqualTo(SessionState.COMPLETE);
        assertThat(FindingsText.of(SessionFindings.of(file)))
                .contains("no guardian: nothing switches off when this program dies")
                .contains("accepts it: a person stands by");
    }

    @Test
    void aMistakeInTheProgramEndsOffAndSaysSo() {
        Path file = folder.resolve("mistake.session");
        assertThatThrownBy(() -> run(
                        file,
                        "a person stands by",
                        scheduler -> scheduler.at(9_000_000_000L, () -> {
                            throw new IllegalStateException("made for the test");
                        })))
                .hasMessage("made for the test");
        SessionFindings findings = SessionFindings.of(file);
        assertThat(findings.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(FindingsText.of(findings))
                .contains("a mistake in the program ended the run")
                .contains("made for");
        assertThat(Verification.of(file).isIntact()).isTrue();
        assertThat(far.supply("supply").isOn()).isFalse();
    }

    private VirtualBench far;

    private RunEnd run(Path file, String accepted, Consumer<VirtualScheduler> before) {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = sheets(accepted.strip());
        far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
        LiveSession session = new LiveSession(
                sheets,
                scheduler,
                far.opener(scheduler),
                WorkerMaker.inline(scheduler),
                Recorder::inline,
                new RehearsalPerson(scheduler, far),
                new RunListener() {});
        session.guardedBy(GuardianStart::of);
        before.accept(scheduler);
        return session.run(
                file, new SessionHead("no guardian", START, ZoneOffset.UTC, true, "test", "", "unit", "", ""));
    }

    private static Sheets sheets(String accepted) {
        Sheets demo = Sheets.demo();
        String line = accepted.isEmpty() ? "" : "without_guardian = \"" + accepted + "\"\n";
        String bench = demo.bench().text().replace("[bench]\n", "[bench]\n" + line);
        return new Sheets(
                demo.design(),
                SheetText.of("bench", Sheet.of("bench.toml", bench), BenchSheet::from),
                SheetText.of("plan", Sheet.of("plan.toml", PLAN), PlanReader::plan));
    }
}
