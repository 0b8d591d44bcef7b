package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.converter.Room;
import railwitness.drivers.converter.Surroundings;
import railwitness.drivers.converter.Wear;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.store.Envelope;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.TimeSpan;

/** Holds from the run to their findings, on the virtual clock. */
@Timeout(120)
class HeldSessionTest {
    private static final String HOUR_AND_A_HALF = HeldRuns.POWERED + """
            [[stage]]
            kind = "hold"
            load_pct = 75
            duration_s = 5400
            """;

    private static final double KILLED_AFTER = 3000;

    @TempDir
    private static Path shared;

    private static Path unbroken;
    private static Path killed;

    @TempDir
    private Path folder;

    /** One run for all that ask of it, with what a kill in its midst would have left. */
    @BeforeAll
    static void heldOnce() throws IOException {
        killed = shared.resolve("killed.session");
        unbroken = shared.resolve("whole.session");
        HeldRuns.run(
                unbroken, HeldRuns.sheets(HOUR_AND_A_HALF), HeldRuns.still(), killedAt(KILLED_AFTER, unbroken, killed));
    }

    private static List<String> whats(Path session) {
        try (SessionFile file = SessionFile.open(session)) {
            return file.events().stream().map(EventEntry::what).toList();
        }
    }

    private static Figure figure(SessionFindings found, FigureName name, Optional<String> rail) {
        return found.findings()
                .figure(name, rail)
                .orElseThrow(() -> new AssertionError(
                        name + " was not found: " + found.findings().notFound()));
    }

    /** Copies file and log as they lie on the disk at that time of the session: what a kill leaves. */
    private static RunListener killedAt(double seconds, Path from, Path copy) {
        int[] swept = {0};
        return new RunListener() {
            @Override
            public void swept(railwitness.drivers.instrument.PollResult polled) {
                if (swept[0] < 40
                        && !polled.readings().isEmpty()
                        && polled.readings().get(0).repliedNanos() > seconds * 1e9) {
                    swept[0]++;
                    try {
                        if (swept[0] == 1) {
                            Thread.sleep(1100);
                        }
                        if (swept[0] < 40) {
                            return;
                        }
                        Files.copy(from, copy);
                        Path log = from.resolveSibling("whole.session-wal");
                        if (Files.exists(log)) {
                            Files.copy(log, copy.resolveSibling(copy.getFileName() + "-wal"));
                        }
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    } catch (InterruptedException e) {
                        throw new IllegalStateException(e);
                    }
                }
            }
        };
    }

    @Test
    void continuedAfterAKillGivesTheSameFiguresAsUnbroken() throws IOException {
        Path copy = killed;
        try (SessionFile file = SessionFile.open(copy)) {
            assertThat(file.state()).isEqualTo(SessionState.INTERRUPTED);
        }
        HeldRuns.goOn(copy, 300);

        SessionFindings whole = SessionFindings.of(unbroken);
        SessionFindings continued = SessionFindings.of(copy, true);
        assertThat(continued.state()).isEqualTo(SessionState.COMPLETE);
        assertThat(continued.brokenChain()).isFalse();
        Soak soak = continued.findings().soak().orElseThrow();
        assertThat(soak.record().breaks()).hasSize(1);
        assertThat(soak.record().gaps()).isEqualTo(1);
        assertThat(whole.findings().soak().orElseThrow().record().gaps()).isZero();
        assertThat(whats(copy)).contains("continued");
        for (FigureName name :
                List.of(FigureName.FINAL_HEAT_SINK_TEMPERATURE, FigureName.EFFICIENCY_WHILE_HELD, FigureName.DRIFT)) {
            Optional<String> rail = name.perRail() ? Optional.of("plus") : Optional.empty();
            Figure one = figure(whole, name, rail);
            Figure other = figure(continued, name, rail);
            double u = one.value().coverage(0.95).expanded()
                    + other.value().coverage(0.95).expanded();
            System.out.println(name.word() + ": unbroken " + one.value() + ", continued " + other.value());
            assertThat(other.value().value())
                    .as(name.word())
                    .isCloseTo(one.value().value(), within(u));
        }
        assertThatThrownBy(() -> HeldRuns.goOn(copy, 300))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("not interrupted");
    }

    /** The heat sink of the sample tends to where its own loss and 1.6 K/W lead. */
    @Test
    void holdForetellsTheFinalTemperature() {
        SessionFindings found = SessionFindings.of(unbroken);
        String text = FindingsText.of(found);
        assertThat(text).contains("final heat-sink rise", "thermal time constant", "held for 1 h 3", "no gaps");
        assertThat(FindingsJson.of(found)).contains("\"soak\" : {", "\"channel\" : \"heatsink.temperature\"");
        Figure drift = figure(found, FigureName.DRIFT, Optional.of("plus"));
        assertThat(Math.abs(drift.value().value())).isLessThan(0.2);
        assertThat(figure(found, FigureName.GAPS, Optional.empty()).value().value())
                .isZero();
    }

    /** What the window's page says: in a technician's words and signs, of a hold that is over. */
    @Test
    void thePageOfAHoldSpeaksOfWhatWas() {
        BurnIn page = BurnIn.of(unbroken).orElseThrow();
        assertThat(page.running()).isFalse();
        assertThat(page.knownWellEnough()).isTrue();
        String said = String.join(" ", page.sentences());
        assertThat(said)
                .contains("Held at 75 % for 1 h 3", "The heat sink ended at 37.", "The + rail drifted by", "\u00b1")
                .doesNotContain("+-", "-0", "may be ended", "plus", "heatsink");
        Estimate end = figure(SessionFindings.of(unbroken), FigureName.FINAL_HEAT_SINK_TEMPERATURE, Optional.empty())
                .value();
        assertThat(page.rows().get(0).get(2))
                .as("with the thermometer's accuracy, as the figure has it")
                .isEqualTo(SoakText.withU(end, "").trim().replace("+-", "\u00b1"));
    }

    @Test
    void stabilityEndsAHoldEarlyAndKeysAreAsked() throws IOException {
        Path session = HeldRuns.run(
                folder.resolve("early.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 100
                        duration_s = 28800
                        until = "IEC 60034-1"
                        at_least_s = 1800
                        key_every_s = 1800
                        hottest_degC = 120
                        """),
                HeldRuns.still(),
                new RunListener() {});
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.COMPLETE);
            assertThat(file.lastNanos() / 1e9).isBetween(1800.0, 20_000.0);
        }
        assertThat(whats(session)).contains("steady", "key");
        SessionFindings found = SessionFindings.of(session);
        assertThat(figure(found, FigureName.FULL_LOAD_EFFICIENCY, Optional.empty())
                        .value()
                        .value())
                .as("a hold at full load counts as full load")
                .isBetween(0.8, 0.97);
    }

    /** 10 CFR 430 App. Z: half an hour at full load, then five minutes within 1 % for two rails; not a minute sooner. */
    @Test
    void inputPowerThatStandsEndsAHoldAfterHalfAnHourAndFiveMinutes() throws IOException {
        Path session = HeldRuns.run(
                folder.resolve("power.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 100
                        duration_s = 7200
                        until = "10 CFR 430 App. Z"
                        hottest_degC = 120
                        """),
                HeldRuns.still(),
                new RunListener() {});
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.COMPLETE);
            assertThat(file.lastNanos() / 1e9).isBetween(2100.0, 2700.0);
            assertThat(file.events())
                    .anyMatch(event -> event.text().contains("steady by 10 CFR 430 Subpart B Appendix Z"));
        }
        assertThat(FindingsText.of(SessionFindings.of(session))).contains("10 CFR 430 Subpart B Appendix Z");
    }

    @Test
    void cyclesAreFollowedAndTheConstantLoadIsAveragedBeforeAndAfter() throws IOException {
        Path session = HeldRuns.run(
                folder.resolve("cycled.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 50
                        duration_s = 3600
                        [[stage.cycle]]
                        for_s = 60
                        load_pct = 100
                        [[stage.cycle]]
                        for_s = 40
                        load_pct = 10
                        [[stage.cycle]]
                        for_s = 20
                        load_pct = 50
                        input_V = 12.0
                        """),
                new Surroundings(Room.still(22), Wear.NONE),
                new RunListener() {});
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.COMPLETE);
            assertThat(file.steps()).extracting(step -> step.step()).contains("50 % cycled begin", "50 % cycled end");
        }
        assertThat(whats(session)).contains("cycles").doesNotContain("contradiction");
        SessionFindings found = SessionFindings.of(session);
        assertThat(figure(found, FigureName.FINAL_HEAT_SINK_RISE, Optional.empty())
                        .value()
                        .value())
                .isBetween(5.0, 25.0);
        for (String rail : List.of("plus", "minus")) {
            Estimate drift = figure(found, FigureName.DRIFT, Optional.of(rail)).value();
            assertThat(Math.abs(drift.value())).as("nothing ages").isLessThan(0.03);
            assertThat(drift.coverage(0.95).expanded())
                    .as("what was read at the constant load before and after is no drift")
                    .isLessThan(0.03);
        }
    }

    /** Load, line and off periods as one table: off for each, first power for each, nothing between without a supply that is off. */
    @Test
    void offPeriodsOfACycleSwitchOffAndPowerUpSafelyEachTime() throws IOException {
        Path session = HeldRuns.run(
                folder.resolve("rested.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 50
                        duration_s = 3600
                        [[stage.cycle]]
                        for_s = 300
                        load_pct = 100
                        [[stage.cycle]]
                        for_s = 60
                        load_pct = 50
                        input_V = 12.0
                        [[stage.cycle]]
                        for_s = 240
                        off = true
                        """),
                HeldRuns.still(),
                new RunListener() {});
        List<String> told = whats(session);
        assertThat(told.stream().filter("off period"::equals)).as("off").hasSize(6);
        assertThat(told.stream().filter("off period over"::equals))
                .as("on again")
                .hasSize(6);
        assertThat(told.stream().filter("output on"::equals)).as("switched on").hasSize(7);
        assertThat(told).doesNotContain("contradiction", "limiting", "drift");
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.COMPLETE);
            assertThat(file.events())
                    .anyMatch(event -> event.text().contains("6 whole cycles done, output off 6 times"));
            EventEntry first = file.events().stream()
                    .filter(event -> event.what().equals("off period"))
                    .findFirst()
                    .orElseThrow();
            long quiet = first.nanos() + 60_000_000_000L;
            Envelope rail = file.envelope(Channel.of("plus.voltage"), new TimeSpan(quiet, quiet + 100_000_000_000L), 1);
            assertThat(rail.highest()[0]).as("rail while off").isLessThan(5);
            Envelope amps =
                    file.envelope(Channel.of("input.current"), new TimeSpan(quiet, quiet + 100_000_000_000L), 1);
            assertThat(amps.highest()[0]).as("input while off").isLessThan(0.05);
        }
        SessionFindings found = SessionFindings.of(session);
        assertThat(figure(found, FigureName.RESTARTS, Optional.empty()).value().value())
                .isEqualTo(6);
        assertThat(figure(found, FigureName.GAPS, Optional.empty()).value().value())
                .isZero();
        assertThat(FindingsText.of(found))
                .contains("6 restarts", "off periods leave no rail")
                .doesNotContain("limiting");
        Soak held = found.findings().soak().orElseThrow();
        assertThat(held.temperatures()).as("the heat sink all the same").isNotEmpty();
    }

    @Test
    void everyHoldOfAPlanIsWorkedOut() throws IOException {
        Path session = HeldRuns.run(
                folder.resolve("three.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 25
                        duration_s = 2400
                        [[stage]]
                        kind = "hold"
                        load_pct = 100
                        duration_s = 5400
                        [[stage]]
                        kind = "hold"
                        load_pct = 25
                        duration_s = 3000
                        """),
                HeldRuns.still(),
                new RunListener() {});
        SessionFindings found = SessionFindings.of(session);
        Soak longest = found.findings().soak().orElseThrow();
        assertThat(longest.record().name()).isEqualTo("100 %");
        assertThat(longest.others()).extracting(other -> other.record().name()).containsExactly("25 % no. 2", "25 %");
        assertThat(longest.record().restarts()).isZero();
        assertThat(longest.record().gaps()).isZero();
        double hot = longest.temperatures().get(0).end().value();
        Estimate cool = longest.others().get(0).temperatures().get(0).end();
        Estimate first = longest.others().get(1).temperatures().get(0).end();
        assertThat(hot).isGreaterThan(cool.value() + 3);
        assertThat(first.value())
                .as("the same load, before and after")
                .isCloseTo(
                        cool.value(),
                        within(cool.coverage(0.95).expanded()
                                + first.coverage(0.95).expanded()));
        assertThat(found.findings().verdicts().stream()
                        .map(verdict -> verdict.requirement().name()))
                .contains("final heat-sink rise at most 45.0, held at 25 % no. 2");
        String text = FindingsText.of(found);
        assertThat(text).contains("held at 100 % for 1 h 3", "held at 25 % no. 2 for 5", "held at 25 % for 4");
        assertThat(text).containsPattern("excursions +0 +0").doesNotContainPattern("excursions +0[.]0");
        assertThat(FindingsJson.of(found)).contains("\"others\" : [ {", "\"hold\" : \"25 % no. 2\"");
    }

    @Test
    void heatThatRunsAwayEndsTheHoldAtItsLimit() throws IOException {
        List<String> told = new ArrayList<>();
        Path session = HeldRuns.run(
                folder.resolve("away.session"),
                HeldRuns.sheets(HeldRuns.POWERED + """
                        [[stage]]
                        kind = "hold"
                        load_pct = 100
                        duration_s = 14400
                        hottest_degC = 40
                        """),
                new Surroundings(Room.still(22), Wear.runaway(4)),
                new RunListener() {
                    @Override
                    public void happened(double at, SessionEvent event) {
                        told.add(event.what() + " " + event.words());
                    }
                });
        try (SessionFile file = SessionFile.open(session)) {
            assertThat(file.state()).isEqualTo(SessionState.TRIPPED);
        }
        assertThat(told).anyMatch(line -> line.startsWith("trip") && line.contains("the hold allows 40.0 degC"));
    }
}
