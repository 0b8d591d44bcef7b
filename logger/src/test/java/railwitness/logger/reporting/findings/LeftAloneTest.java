package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.analysis.design.FigureName;
import railwitness.logger.recording.record.Run;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.Verification;

/**
 * What may befall a unit that was left under power, in the midst of a hold: mains that fail and come back, a computer that
 * sleeps, a disk that is full, a person who ends it. Each leaves the unit off and the session whole.
 */
@Timeout(120)
class LeftAloneTest {
    private static final String CONSTANT = HeldRuns.POWERED + """
            [[stage]]
            kind = "hold"
            load_pct = 75
            duration_s = 3600
            """;
    private static final String CYCLED = HeldRuns.POWERED + """
            [[stage]]
            kind = "hold"
            load_pct = 50
            duration_s = 3600
            [[stage.cycle]]
            for_s = 400
            load_pct = 75
            [[stage.cycle]]
            for_s = 200
            off = true
            """;
    private static final double UNDER_LOAD = 1400;
    private static final double IN_OFF_PERIOD = 1150;

    @TempDir
    private Path folder;

    private Path file() {
        return folder.resolve("left.session");
    }

    private List<String> told() {
        try (SessionFile session = SessionFile.open(file())) {
            return session.events().stream().map(EventEntry::what).toList();
        }
    }

    private void assertOffAndWhole(HeldRuns.Hands after, SessionState state) {
        assertThat(after.bench().supply("supply").isOn()).as("output").isFalse();
        assertThat(Verification.of(file()).words()).startsWith("intact");
        try (SessionFile session = SessionFile.open(file())) {
            assertThat(session.state()).isEqualTo(state);
        }
        assertThat(told()).contains("off");
    }

    /** Mains that fail for a moment: the supply comes back with its output off, as instruments do, and nobody ordered that. */
    @ParameterizedTest
    @ValueSource(strings = {CONSTANT, CYCLED})
    void mainsThatFailAndComeBackEndTheRun(String plan) throws IOException {
        HeldRuns.Hands after = HeldRuns.meddled(file(), HeldRuns.sheets(plan), UNDER_LOAD, hands -> hands.bench()
                .supply("supply")
                .hear("*RST"));
        assertOffAndWhole(after, SessionState.TRIPPED);
        try (SessionFile session = SessionFile.open(file())) {
            assertThat(session.lastNanos() / 1e9).as("ended at once").isLessThan(UNDER_LOAD + 60);
        }
        assertThat(SessionFindings.of(file()).findings().soak())
                .as("what was held is worked out")
                .isPresent();
    }

    @Test
    void aComputerThatSleepsUnderPowerSwitchesOffWhenItWakes() throws IOException {
        HeldRuns.Hands after =
                HeldRuns.meddled(file(), HeldRuns.sheets(CONSTANT), UNDER_LOAD, hands -> hands.scheduler()
                        .spend(Duration.ofMinutes(10)));
        assertOffAndWhole(after, SessionState.TRIPPED);
        try (SessionFile session = SessionFile.open(file())) {
            assertThat(session.events())
                    .anyMatch(
                            event -> event.what().equals("trip") && event.text().contains("stood still for 10 min")
                                    || event.text().contains("stood still for 600"));
            assertThat(session.events()).anyMatch(event -> event.text().contains("nothing was recorded for"));
        }
    }

    /** Nothing is under power then: the cycle goes on by first power. */
    @Test
    void aComputerThatSleepsInAnOffPeriodGoesOn() throws IOException {
        HeldRuns.Hands after =
                HeldRuns.meddled(file(), HeldRuns.sheets(CYCLED), IN_OFF_PERIOD, hands -> hands.scheduler()
                        .spend(Duration.ofMinutes(2)));
        assertOffAndWhole(after, SessionState.COMPLETE);
        assertThat(told()).contains("clock", "off period over");
    }

    @Test
    void aStoreThatCannotWriteAnyMoreEndsTheHold() throws IOException {
        HeldRuns.Hands[] seen = new HeldRuns.Hands[1];
        assertThatThrownBy(() -> HeldRuns.meddled(file(), HeldRuns.sheets(CONSTANT), UNDER_LOAD, hands -> {
                    seen[0] = hands;
                    hands.recorder()[0].offer(writer -> {
                        throw new StoreException("the disk is full");
                    });
                }))
                .isInstanceOf(StoreException.class);
        assertOffAndWhole(seen[0], SessionState.TRIPPED);
    }

    /** Offered in the window once the final temperature is known: the load is averaged and the plan goes on to its end. */
    @Test
    void aPersonEndsAHoldThatHasShownEnough() throws IOException {
        HeldRuns.Hands after = HeldRuns.meddled(file(), HeldRuns.sheets(CONSTANT), 2000, hands -> hands.session()
                .running()
                .ifPresent(Run::endHold));
        assertOffAndWhole(after, SessionState.COMPLETE);
        try (SessionFile session = SessionFile.open(file())) {
            assertThat(session.lastNanos() / 1e9).isBetween(2000.0, 2100.0);
            assertThat(session.events()).anyMatch(event -> event.text().contains("a person ends the hold here"));
            assertThat(session.steps()).extracting(step -> step.step()).contains("75 % end");
        }
        SessionFindings found = SessionFindings.of(file());
        assertThat(found.findings().figure(FigureName.FINAL_HEAT_SINK_TEMPERATURE, java.util.Optional.empty()))
                .isPresent();
    }
}
