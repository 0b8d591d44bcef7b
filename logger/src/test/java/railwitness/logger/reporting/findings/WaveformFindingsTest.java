package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.importing.SessionCopy;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;

/** A scope on the bench, and a trace that comes later. */
class WaveformFindingsTest {
    private static final String SCOPE = """

            [[instrument]]
            name = "scope"
            kind = "scope"
            port = "scope"
            dialect = "scpi-1999"
            reads = "plus.ripple"
            range = 1
            span_s = 0.001
            band_Hz = [0, 20000000]
            accuracy.ripple = { reading_pct = 3, range_pct = 1, stated_as = "limit" }
            """;

    @TempDir
    static Path folder;

    private static Path recorded;
    private static SessionFindings findings;
    private static Specimen specimen;

    @BeforeAll
    static void record() {
        Sheets demo = Sheets.demo();
        SheetText<BenchSheet> bench =
                SheetText.of("bench", Sheet.of("bench.toml", demo.bench().text() + SCOPE), BenchSheet::from);
        Sheets sheets = new Sheets(demo.design(), bench, demo.plan());
        specimen = FixtureMaker.specimen(sheets);
        recorded = Rehearsed.session(folder.resolve("0412.session"), sheets, specimen);
        findings = SessionFindings.of(recorded);
    }

    private static Figure peakToPeak(SessionFindings of, String rail) {
        return of.findings()
                .figure(FigureName.RIPPLE_PEAK_TO_PEAK, Optional.of(rail))
                .orElseThrow();
    }

    @Test
    void theScopesRailHasItsRipplePeakToPeakInTheStatedBand() {
        Figure figure = peakToPeak(findings, "plus");
        assertThat(figure.at()).contains("20.0 MHz");
        assertThat(figure.value().known()).isTrue();
        assertThat(figure.value().value()).isBetween(0.08, 0.25);
        assertThat(figure.value().u() / figure.value().value()).isCloseTo(0.03 / Math.sqrt(3), within(1e-9));
    }

    @Test
    void theRippleOfASoundUnitLiesAtTwiceTheSwitchingFrequency() {
        var wave = findings.waveforms().get("plus");
        assertThat(wave.atTwiceVolts().orElseThrow()).isGreaterThan(0.02);
        assertThat(wave.shareAtCycle().orElseThrow()).isLessThan(0.1);
        assertThat(FindingsText.of(findings)).contains("waveform, plus: ").contains("at twice it");
    }

    @Test
    void theMeterStillReadsTheRippleOfTheSameRail() {
        Figure ripple = findings.findings()
                .figure(FigureName.RIPPLE, Optional.of("plus"))
                .orElseThrow();
        assertThat(ripple.at()).contains("300 kHz");
    }

    @Test
    void theOtherRailStillNeedsAWaveform() {
        assertThat(findings.findings().notFound())
                .anyMatch(missing -> missing.name() == FigureName.RIPPLE_PEAK_TO_PEAK
                        && missing.rail().equals(Optional.of("minus")));
    }

    @Test
    void aCopyWithTracesFindsAllTheOldOneFoundAndTheTraces() throws IOException {
        Path traced = folder.resolve("0412-traced.session");
        Channel minus = Channel.of("minus.ripple");
        Channel drain = Channel.of("drain.voltage");
        try (SessionFile old = SessionFile.open(recorded);
                SessionWriter writer = SessionWriter.create(traced, head())) {
            SessionCopy.of(old, writer);
            writer.event(
                    1, new SessionEvent.TraceTaken(minus, "m.csv", OptionalDouble.of(20e6), OptionalDouble.empty()));
            writer.waveform(1, new Waveform(minus, 0, 1e-6, sine(1000, 50e3, 0.05)));
            writer.event(1, new SessionEvent.TraceTaken(drain, "d.csv", OptionalDouble.empty(), OptionalDouble.of(3)));
            writer.waveform(1, new Waveform(drain, 0, 1e-6, sine(1000, 25e3, 30)));
            writer.finish(SessionState.COMPLETE);
        }
        SessionFindings copy = SessionFindings.of(traced);
        List<Figure> old = findings.findings().figures();
        assertThat(copy.findings().figures()).hasSize(old.size() + 2);
        assertThat(copy.steps()).isEqualTo(findings.steps());
        for (Figure figure : old) {
            assertThat(copy.findings()
                            .figure(figure.name(), figure.rail())
                            .orElseThrow()
                            .value()
                            .value())
                    .as(figure.label())
                    .isEqualTo(figure.value().value());
        }
        assertThat(peakToPeak(copy, "minus").value().value()).isCloseTo(0.1, within(1e-3));
        assertThat(peakToPeak(copy, "minus").value().known()).isFalse();
        Figure peak = copy.findings()
                .figure(FigureName.PEAK_DRAIN_VOLTAGE, Optional.empty())
                .orElseThrow();
        assertThat(peak.value().value()).isCloseTo(30, within(0.1));
        assertThat(peak.at()).contains("40 % of the switches' rating of 75.00 V");
    }

    @Test
    void aDrainsTraceShowsTheDrive() {
        Path traced = folder.resolve("drive.session");
        Channel drain = Channel.of("drain.voltage");
        double[] volts = new double[1000];
        Arrays.setAll(volts, i -> {
            double phase = i * 1e-7 * 25e3 % 1;
            return phase < 0.45 ? 0.1 : phase >= 0.5 && phase < 0.95 ? 26.9 : 13.5;
        });
        try (SessionFile old = SessionFile.open(recorded);
                SessionWriter writer = SessionWriter.create(traced, head())) {
            SessionCopy.of(old, writer);
            writer.event(1, new SessionEvent.TraceTaken(drain, "d.csv", OptionalDouble.empty(), OptionalDouble.of(2)));
            writer.waveform(1, new Waveform(drain, 0, 1e-7, volts));
            writer.finish(SessionState.COMPLETE);
        }
        SessionFindings found = SessionFindings.of(traced);
        Estimate area = found.findings()
                .figure(FigureName.VOLT_SECONDS, Optional.empty())
                .orElseThrow()
                .value();
        assertThat(area.value())
                .isCloseTo(13.4 * 0.45 / 25e3, within(area.coverage(0.95).expanded()));
        assertThat(FindingsText.of(found))
                .containsPattern("drive frequency +2\\d{4} ")
                .containsPattern("drive duty +4\\d[.]\\d+ +\\S+ +%")
                .containsPattern("volt-seconds of the drive +24\\d[.]?\\d* +\\S+ +V us");
        assertThat(FindingsJson.of(found)).contains("\"volt-seconds of the drive\"", "\"V s\"");
    }

    private static double[] sine(int samples, double hertz, double amplitude) {
        double[] volts = new double[samples];
        Arrays.setAll(volts, i -> amplitude * Math.sin(2 * Math.PI * hertz * i * 1e-6));
        return volts;
    }

    private static SessionHead head() {
        return new SessionHead(
                "0412-traced",
                Instant.parse("2026-05-11T08:00:00Z"),
                ZoneOffset.UTC,
                true,
                "test",
                "",
                "Saloon amplifier supply",
                "0412",
                "");
    }
}
