package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.drivers.converter.FaultCode;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Row;

/** The window, driven by keys on a real or virtual display. */
class WindowTest extends OnDisplay {
    private static final double QUICK = 250;
    private static final double SLOW = 8;

    @Test
    void wholeRehearsalGoesFromStartToCertificateByKeyboardAlone() throws IOException {
        driver.rehearsal(QUICK);
        assertThat(driver.text("band title")).isEqualTo("Nothing is connected");
        driver.controlEnter();
        driver.until("the bench is shown", () -> driver.window().present().equals("bench"));
        driver.controlEnter();
        driver.until("the cautions are shown", () -> driver.window().present().equals("cautions"));
        driver.controlEnter();
        driver.until("the run is shown", () -> driver.window().present().equals("run"));
        driver.until("the run is over", () -> driver.run().filter(RunView::over).isPresent());
        driver.until(
                "the findings are open",
                () -> driver.ask(() -> driver.window().desk().session().isPresent()));
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.COMPLETE);
        assertThat(inked()).hasSize(13);
        driver.picture("run");
        driver.controlEnter();
        driver.until(
                "the findings are shown",
                () -> driver.sheet("findings sheet").rows().size() > 20);
        assertThat(driver.text("verdict")).contains("fit to return").doesNotContain("not fit");
        driver.key(KeyEvent.VK_DOWN);
        driver.key(KeyEvent.VK_ENTER);
        assertThat(driver.text("definition")).contains("mean of the efficiencies");
        driver.picture("findings");
        driver.controlEnter();
        driver.until(
                "the certificate is seen",
                () -> driver.ask(() -> driver.window().line().acts().stream()
                        .anyMatch(act -> act.key().equals("keep"))));
        driver.picture("certificate");
        driver.controlEnter();
        driver.until("the certificate is kept", () -> files(".pdf").size() == 1);
        assertThat(Files.size(files(".pdf").get(0))).isGreaterThan(10_000);
    }

    @Test
    void escapeSwitchesOffWhereverTheFocusIs() {
        rehearse(SLOW, 2);
        driver.key(KeyEvent.VK_N, KeyEvent.VK_CONTROL);
        driver.until("a note is asked for", () -> driver.focused("answer"));
        driver.type("fan is loud");
        driver.key(KeyEvent.VK_ESCAPE);
        driver.until("all is off", () -> driver.run().filter(RunView::over).isPresent());
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.STOPPED);
        driver.until("it says so", () -> driver.text("band title").equals("Output is off"));
    }

    @Test
    void noteIsKeptWithTheSession() {
        rehearse(SLOW, 2);
        driver.key(KeyEvent.VK_N, KeyEvent.VK_CONTROL);
        driver.until("a note is asked for", () -> driver.focused("answer"));
        driver.type("fan is loud");
        driver.key(KeyEvent.VK_ENTER);
        driver.key(KeyEvent.VK_ESCAPE);
        driver.until("all is off", () -> driver.run().filter(RunView::over).isPresent());
        try (SessionFile file = SessionFile.open(files(".session").get(0))) {
            assertThat(file.notes()).extracting(note -> note.text()).containsExactly("fan is loud");
        }
    }

    @Test
    void tripIsShownInWordsAndInTheFindings() {
        driver.ask(() -> {
            driver.window()
                    .desk()
                    .rehearsal(driver.window().desk().rehearsal().withFault(Optional.of(FaultCode.SHORTED_RECTIFIER)));
            return true;
        });
        rehearse(QUICK, -1);
        driver.until("all is off", () -> driver.run().filter(RunView::over).isPresent());
        driver.until("it says so", () -> driver.text("band title").startsWith("Tripped"));
        assertThat(driver.run().orElseThrow().trip()).isPresent();
        driver.picture("tripped");
        driver.until(
                "the findings are open",
                () -> driver.ask(() -> driver.window().desk().session().isPresent()));
        driver.controlEnter();
        driver.until("the causes are shown", () -> driver.named("causes").isVisible());
        driver.picture("findings-tripped");
    }

    @Test
    void mistakeOfTheScreenIsSaidAndStopsNothing() {
        rehearse(QUICK, 2);
        javax.swing.SwingUtilities.invokeLater(() -> {
            throw new IllegalStateException("a mistake on purpose");
        });
        driver.until("it is said", () -> driver.text("line head").startsWith("A mistake in the program"));
        driver.until("the run is over", () -> driver.run().filter(RunView::over).isPresent());
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.COMPLETE);
    }

    @Test
    void closingDuringARunAsksAndThenSwitchesOff() {
        rehearse(SLOW, 2);
        driver.cross();
        driver.until("it asks", () -> driver.named("question") != null);
        driver.picture("closing");
        driver.until("its first answer has the focus", () -> driver.focused("answer Let it run"));
        driver.key(KeyEvent.VK_ENTER);
        driver.until("the question has gone", () -> driver.named("question") == null);
        assertThat(driver.run().orElseThrow().over()).isFalse();
        driver.cross();
        driver.until("it asks again", () -> driver.named("question") != null);
        driver.until("its first answer has the focus", () -> driver.focused("answer Let it run"));
        driver.key(KeyEvent.VK_TAB);
        driver.key(KeyEvent.VK_ENTER);
        driver.until("it is closed", () -> !driver.window().frame().isDisplayable());
        try (SessionFile file = SessionFile.open(files(".session").get(0))) {
            assertThat(file.state()).isEqualTo(SessionState.STOPPED);
        }
    }

    @Test
    void closingAsksBeforeSheetsAreLost() {
        driver.ask(() -> driver.named("[unit] name").requestFocusInWindow());
        driver.until("a field has the focus", () -> driver.focused("[unit] name"));
        driver.type("x");
        driver.until(
                "the sheet is known to be changed",
                () -> driver.ask(
                        () -> driver.window().desk().unsaved(railwitness.logger.recording.sheet.SheetKind.DESIGN)));
        driver.cross();
        driver.until("it asks", () -> driver.named("question") != null);
        assertThat(driver.text("question")).contains("the design sheet");
        driver.until("its first answer has the focus", () -> driver.focused("answer Go back"));
        driver.key(KeyEvent.VK_ENTER);
        driver.until("the question has gone", () -> driver.named("question") == null);
        assertThat(driver.window().frame().isDisplayable()).isTrue();
    }

    @Test
    void stageThatCannotBeEnteredSaysWhy() {
        driver.key(KeyEvent.VK_5, KeyEvent.VK_CONTROL);
        assertThat(driver.window().present()).isEqualTo("unit");
        assertThat(driver.text("line head")).contains("No session is open yet");
    }

    @Test
    void theLeastWindowHoldsEverything() {
        driver.ask(() -> {
            driver.window().frame().setSize(1024, 700);
            driver.window().frame().validate();
            return true;
        });
        driver.until("it is small", () -> {
            var off = driver.named("switch off").getBounds();
            return off.width > 0 && off.x + off.width <= 1024;
        });
        for (String stage : List.of("unit", "bench", "cautions", "run", "sessions")) {
            driver.ask(() -> {
                driver.window().enter(stage);
                return true;
            });
            driver.picture("small-" + stage);
        }
        var off = driver.named("switch off").getBounds();
        assertThat(off.width).isGreaterThanOrEqualTo(200);
        assertThat(off.x + off.width).isLessThanOrEqualTo(1024);
    }

    /** Starts a rehearsal and waits for a step; -1 does not wait. */
    private void rehearse(double pace, int step) {
        driver.rehearsal(pace);
        driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
        driver.controlEnter();
        driver.until("a run is there", () -> driver.run().isPresent());
        if (step >= 0) {
            driver.until(
                    "step " + step + " goes on",
                    () -> driver.run().orElseThrow().liveStep() >= step);
        }
    }

    private List<Row> inked() {
        return driver.sheet("test sheet").rows().stream()
                .filter(row -> !row.group() && row.cells().get(2).ink() == Ink.INK)
                .toList();
    }

    private List<Path> files(String ending) {
        try (var all = Files.list(folder)) {
            return all.filter(file -> file.toString().endsWith(ending)).toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
