package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.function.DoubleConsumer;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.record.LiveSession;
import railwitness.logger.recording.record.Person;
import railwitness.logger.recording.record.RehearsalPerson;
import railwitness.logger.recording.record.RunListener;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;

/** A person who has another resistor at hand than the one asked for, and says so. */
class OtherResistorTest {
    private static final Instant START = Instant.parse("2026-05-11T08:00:00Z");
    private static final double AT_HAND_OHMS = 11.5;

    @TempDir
    Path folder;

    private static Sheets sheets() {
        Sheets demo = Sheets.demo();
        String bench = Pattern.compile(
                        "\\[\\[instrument]]\\s+name = \"plus load\".*?(?=\\[\\[instrument]])", Pattern.DOTALL)
                .matcher(demo.bench().text())
                .replaceFirst("");
        String bank =
                "\n[[resistor_bank]]\nrail = \"plus\"\nresistances_ohm = [9.2, 12.2, 18.4, 36.7]\ntolerance_pct = 1\n";
        return new Sheets(demo.design(), Sheets.bench("bench.toml", bench + bank), demo.plan());
    }

    /** Does as asked, but for one resistor. */
    private static final class Hands implements Person {
        private final RehearsalPerson person;

        Hands(RehearsalPerson person) {
            this.person = person;
        }

        @Override
        public void act(String sentence, Runnable done) {
            person.act(sentence, done);
        }

        @Override
        public void read(String sentence, java.util.function.Consumer<java.util.OptionalDouble> value) {
            person.read(sentence, value);
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            person.disconnect(sentence, open);
        }

        @Override
        public void forget() {
            person.forget();
        }

        @Override
        public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
            person.switchLoad(rail, Math.abs(ohms - 12.2) < 0.1 ? AT_HAND_OHMS : ohms, switched);
        }
    }

    @Test
    void whatIsTypedInsteadIsReckonedWith() {
        VirtualScheduler scheduler = new VirtualScheduler(START);
        Sheets sheets = sheets();
        VirtualBench bench = VirtualBench.of(
                FixtureMaker.specimen(sheets),
                java.util.List.of(),
                sheets.bench().content(),
                5,
                scheduler::nowNanos);
        Path file = folder.resolve("other.session");
        new LiveSession(
                        sheets,
                        scheduler,
                        bench.opener(scheduler),
                        WorkerMaker.inline(scheduler),
                        Recorder::inline,
                        new Hands(new RehearsalPerson(scheduler, bench)),
                        new RunListener() {})
                .run(
                        file,
                        new SessionHead("0412", START, ZoneOffset.UTC, true, "test", "", "Saloon amplifier", "1", ""));

        SessionFindings findings = SessionFindings.of(file);
        var plus = findings.findings().points().stream()
                .filter(point -> point.step().startsWith("75 %"))
                .findFirst()
                .orElseThrow()
                .rail("plus")
                .orElseThrow();
        assertThat(plus.voltage().value() / plus.current().value()).isCloseTo(AT_HAND_OHMS, within(1e-9));
        assertThat(findings.findings().contradictions()).isEmpty();
        assertThat(findings.events()).anyMatch(event -> event.text().equals("plus: 11.5 ohm"));
    }
}
