package railwitness.logger.ui.screen.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkTest {
    private long nanos = 5_000_000_000L;

    private void after(double seconds) {
        nanos += Math.round(seconds * 1e9);
    }

    @Test
    void aQuarterInFourSecondsLeavesTwelve() {
        assertThat(Remaining.of(0.25, Duration.ofSeconds(4))).contains(Duration.ofSeconds(12));
    }

    @Test
    void longTimesAreSaidInSteps() {
        assertThat(Remaining.of(0.1, Duration.ofMillis(3500))).contains(Duration.ofSeconds(35));
        assertThat(Remaining.of(0.1, Duration.ofMillis(3400))).contains(Duration.ofSeconds(35));
    }

    @Test
    void tooLittleDoneTellsNothing() {
        assertThat(Remaining.of(0.01, Duration.ofSeconds(9))).isEmpty();
        assertThat(Remaining.of(0.5, Duration.ofMillis(100))).isEmpty();
        assertThat(Remaining.of(1, Duration.ofSeconds(9))).isEmpty();
    }

    @Test
    void whereNoShareIsKnownItSaysForHowLongAlready() {
        Work work = new Work("Setting", () -> nanos);
        after(3);
        assertThat(work.line().head()).isEqualTo("Setting");
        assertThat(work.line().caption()).contains("3 s");
        assertThat(work.line().progress()).isEmpty();
        assertThat(work.line().acts()).isEmpty();
    }

    @Test
    void shareAndTimeLeftAreSaidAndItCanBeStopped() {
        Work work = new Work("Exporting", () -> nanos);
        after(3);
        work.at(0.2);
        assertThat(work.line().progress()).contains(new StatusLine.Progress("about 12 s left", 0.2));
        work.line().acts().get(0).done().run();
        assertThat(work.line().head()).isEqualTo("Stopping");
        assertThatThrownBy(() -> work.at(0.3)).isInstanceOf(Work.Stopped.class).hasMessageStartingWith("Stopped.");
    }

    @Test
    void whatIsRememberedIsThereTheNextTime(@TempDir Path folder) throws Exception {
        Path sessions = folder.resolve("sessions");
        new Remembered(sessions).put("workshop", "Lock \u00a3 side\nYard 2");
        assertThat(new Remembered(sessions).get("workshop")).contains("Lock \u00a3 side\nYard 2");
        Files.writeString(sessions.resolve("window.properties"), "bad=\\u12");
        assertThat(new Remembered(sessions).get("workshop")).isEmpty();
    }
}
