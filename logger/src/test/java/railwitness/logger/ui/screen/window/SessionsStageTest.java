package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.logger.reporting.comparing.SmallSession;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Row;

/** The stage of the recorded sessions, driven by keys. */
class SessionsStageTest {
    private static final double OHMS = 0.6;

    @TempDir
    private Path folder;

    private WindowDriver driver;

    @BeforeEach
    void displayIsThere() {
        Display.required();
    }

    @AfterEach
    void close() {
        if (driver != null) {
            driver.close();
        }
    }

    /** Opens the window at its sessions, once all of them are judged. */
    private void open(int sessions) {
        driver = new WindowDriver(folder);
        driver.key(KeyEvent.VK_6, KeyEvent.VK_CONTROL);
        driver.until(
                "all are judged",
                () -> list().size() == sessions
                        && list().stream().noneMatch(row -> row.words().contains("\u2026")));
        driver.key(KeyEvent.VK_DOWN);
        driver.until("a session is chosen", () -> driver.focused("sessions list"));
    }

    private List<Row> list() {
        return driver.ask(() -> driver.sheet("sessions list").rows());
    }

    private void session(String id, double ohms) {
        SmallSession.write(folder.resolve(id + ".session"), id, "", ohms);
    }

    private void both(String name) {
        driver.picture(name + "-light");
        driver.ask(() -> {
            driver.window().theme(Theme.DARK);
            return true;
        });
        driver.picture(name + "-dark");
        driver.ask(() -> {
            driver.window().theme(Theme.LIGHT);
            return true;
        });
    }

    @Test
    void wordsOfTheSearchNarrowTheList() {
        session("0412", OHMS);
        session("0413", OHMS);
        open(2);
        both("sessions-list");
        driver.key(KeyEvent.VK_TAB, KeyEvent.VK_SHIFT);
        driver.until("the search has the focus", () -> driver.focused("search"));
        driver.type("saloon 0413");
        driver.until("one is left", () -> list().size() == 1);
        assertThat(list().get(0).words()).contains("0413");
    }

    @Test
    void twoMarkedSessionsAreComparedWithWhatReallyChangedFirst() throws IOException {
        session("0412", OHMS);
        session("0413", OHMS + 0.2);
        open(2);
        driver.key(KeyEvent.VK_SPACE);
        driver.key(KeyEvent.VK_DOWN);
        driver.key(KeyEvent.VK_SPACE);
        driver.until(
                "both are marked",
                () -> list().get(0).words().startsWith("A")
                        && list().get(1).words().startsWith("B"));
        driver.picture("sessions-marked");
        driver.controlEnter();
        driver.until(
                "it is compared",
                () -> driver.ask(() -> !driver.sheet("comparison").rows().isEmpty()));
        List<Row> rows = driver.ask(() -> driver.sheet("comparison").rows());
        assertThat(rows.get(0).words()).isEqualTo("Really changed");
        assertThat(rows.get(1).cells().get(0).ink()).isEqualTo(Ink.LIVE);
        assertThat(rows).anyMatch(row -> row.words().equals("No change shown"));
        int from = rows.stream().map(Row::words).toList().indexOf("No change shown");
        assertThat(rows.subList(1, from)).anyMatch(row -> row.words().startsWith("output resistance as wired +"));
        for (String chart : List.of("figure chart", "curves 0", "curves 1", "curves 2")) {
            driver.until(chart + " is there", () -> driver.named(chart).isVisible());
        }
        assertThat(driver.text("figure words")).contains("8 sessions");
        both("sessions-compared");
        driver.key(KeyEvent.VK_TAB);
        driver.until("the pictures have the focus", () -> driver.focused("comparison pictures"));
        driver.key(KeyEvent.VK_PAGE_DOWN);
        driver.until(
                "they are scrolled",
                () -> driver.ask(
                        () -> ((javax.swing.JComponent) driver.named("comparison pictures")).getVisibleRect().y > 100));
        driver.picture("sessions-compared-scrolled");
        driver.key(KeyEvent.VK_S, KeyEvent.VK_CONTROL);
        driver.type(folder + "/two.pdf", KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until("it is saved", () -> Files.exists(folder.resolve("two.pdf")));
        assertThat(Files.size(folder.resolve("two.pdf"))).isGreaterThan(10_000);
    }

    @Test
    void amongEightSistersTheUnlikeOneIsNamed() {
        for (int i = 1; i <= 8; i++) {
            session("050" + i, i == 6 ? 1.4 : OHMS + 0.001 * (i % 3));
        }
        open(8);
        for (int i = 0; i < 8; i++) {
            driver.key(KeyEvent.VK_SPACE);
            driver.key(KeyEvent.VK_DOWN);
        }
        driver.controlEnter();
        driver.until(
                "it is compared",
                () -> driver.ask(() -> !driver.sheet("comparison").rows().isEmpty()));
        driver.until("the figure is drawn", () -> driver.named("range chart").isVisible());
        List<String> letters = List.of("A", "B", "C", "D", "E", "F", "G", "H");
        String odd = letters.get(list().stream()
                .map(Row::words)
                .toList()
                .indexOf(list().stream()
                        .map(Row::words)
                        .filter(words -> words.contains("0506"))
                        .findFirst()
                        .orElseThrow()));
        assertThat(driver.text("comparison summary")).startsWith(odd + " (0506) is unlike the others");
        assertThat(driver.text("figure words")).startsWith(odd + " is unlike the others");
        both("sessions-sisters");
    }

    @Test
    void exportedReadingsImportedAgainGiveTheSameFigures() throws IOException {
        session("0412", OHMS);
        open(1);
        driver.key(KeyEvent.VK_E, KeyEvent.VK_CONTROL);
        driver.type(folder + "/out", KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until("it is exported", () -> Files.exists(folder.resolve("out/readings.csv")));
        driver.until("it says so", () -> driver.text("line head").equals("Exported"));
        driver.picture("sessions-exported");

        driver.key(KeyEvent.VK_I, KeyEvent.VK_CONTROL);
        driver.type(folder + "/out/readings.csv", KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until(
                "its first rows are seen",
                () -> driver.ask(() -> !driver.sheet("table preview").rows().isEmpty()));
        driver.until("it can be taken", () -> driver.text("line caption").startsWith("Its first rows can be taken"));
        both("sessions-import");
        driver.key(KeyEvent.VK_DOWN);
        driver.until(
                "the wrong sign is refused", () -> driver.text("line caption").startsWith("It cannot be taken"));
        assertThat(driver.text("table fault")).contains("choose them").doesNotContain("--");
        driver.picture("sessions-import-fault");
        driver.key(KeyEvent.VK_UP);
        driver.until("it can be taken again", () -> driver.text("line caption").startsWith("Its first rows"));
        driver.controlEnter();
        driver.until("its findings are shown", () -> driver.window().present().equals("findings"));
        SessionFindings first = SessionFindings.of(folder.resolve("0412.session"));
        SessionFindings again = SessionFindings.of(folder.resolve("readings-imported.session"));
        assertThat(again.design())
                .as("an example that nobody looked at is not this table's sheet")
                .isEmpty();
        // without a sheet there is no nominal input to hold a figure at; every reading stands for itself
        int compared = 0;
        for (Figure figure : first.findings().figures()) {
            Figure taken = again.findings().figure(figure.name(), figure.rail()).orElseThrow();
            if (taken.at().equals(figure.at())) {
                // lines weigh their points by what is known of each: a table does not say how well it was read
                assertThat(taken.value().value())
                        .as(figure.label())
                        .isCloseTo(
                                figure.value().value(),
                                within(Math.max(1e-12, figure.value().u())));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(4);
    }

    @Test
    void aScopesTraceGoesIntoACopy() throws IOException {
        session("0412", OHMS);
        Files.writeString(
                folder.resolve("ripple.csv"),
                IntStream.range(0, 400)
                        .mapToObj(i -> i + "e-7," + 0.02 * ((i % 200 < 100 ? i : 200 - i) % 100) / 100)
                        .collect(Collectors.joining("\n")));
        open(1);
        driver.key(KeyEvent.VK_T, KeyEvent.VK_CONTROL);
        driver.type(folder + "/ripple.csv", KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until("the rail is asked for", () -> driver.focused("trace rail"));
        driver.key(KeyEvent.VK_TAB);
        driver.type("x");
        driver.until("that is no number", () -> driver.text("line caption").startsWith("A field is not right"));
        driver.picture("sessions-trace-fault");
        driver.key(KeyEvent.VK_BACK_SPACE);
        driver.type("20");
        driver.until("it is right", () -> driver.text("line caption").startsWith("A new session"));
        driver.controlEnter();
        driver.until("its findings are shown", () -> driver.window().present().equals("findings"));
        SessionFindings traced = SessionFindings.of(folder.resolve("0412-traced.session"));
        assertThat(traced.findings().figure(FigureName.RIPPLE_PEAK_TO_PEAK, Optional.of("plus")))
                .isPresent();
        assertThat(traced.events()).anyMatch(event -> event.text().contains("band up to 2.00000e+07 Hz"));
    }

    @Test
    void verifyingSaysThatNothingWasAltered() {
        session("0412", OHMS);
        open(1);
        driver.key(KeyEvent.VK_K, KeyEvent.VK_CONTROL);
        driver.until("it says so", () -> driver.text("line head").equals("It is as it was recorded"));
        assertThat(driver.text("said")).startsWith("Intact: ").contains("seal");
        driver.picture("sessions-verified");
    }

    @Test
    void allPagesOfTheCertificateAreSeenAsOrderedAndTheOrderIsRemembered() throws IOException {
        session("0412", OHMS);
        open(1);
        driver.key(KeyEvent.VK_P, KeyEvent.VK_CONTROL);
        driver.until("the certificate is seen", () -> driver.text("line head").startsWith("This is the certificate"));
        int pages = pages();
        assertThat(pages).isGreaterThan(2);
        both("certificate-a4");
        driver.until("the pages have the focus", () -> driver.focused("certificate pages"));
        driver.key(KeyEvent.VK_END, KeyEvent.VK_CONTROL);
        driver.until(
                "the last page is seen",
                () -> driver.ask(() -> {
                    var pagesShown = (javax.swing.JComponent) driver.named("certificate pages");
                    return pagesShown.getVisibleRect().y > pagesShown.getHeight() / 2;
                }));
        driver.picture("certificate-end");
        ask(() -> driver.named("paper").requestFocusInWindow());
        driver.until("paper has the focus", () -> driver.focused("paper"));
        driver.key(KeyEvent.VK_DOWN);
        ask(() -> driver.named("workshop").requestFocusInWindow());
        driver.until("workshop has the focus", () -> driver.focused("workshop"));
        driver.type("lock side workshop");
        driver.until("it is set anew", () -> driver.text("line head").startsWith("This is the certificate"));
        driver.picture("certificate-letter");
        driver.controlEnter();
        driver.until("it is kept", () -> Files.exists(folder.resolve("0412.pdf")));
        assertThat(Files.readString(folder.resolve("window.properties")))
                .contains("LETTER")
                .contains("lock side workshop");
        driver.until(
                "the findings are shown again", () -> driver.text("line head").startsWith("The certificate is kept"));
    }

    private int pages() {
        return Integer.parseInt(driver.text("line head").replaceAll("\\D", ""));
    }

    private void ask(java.util.concurrent.Callable<Boolean> task) {
        driver.ask(task);
    }

    @Test
    void certificateOfAnAlteredSessionIsRefusedInWords() throws Exception {
        session("0412", OHMS);
        try (var connection = java.sql.DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("0412.session"));
                var statement = connection.createStatement()) {
            statement.execute("UPDATE event SET text = 'nothing was shown' WHERE what = 'note'");
        }
        open(1);
        driver.key(KeyEvent.VK_P, KeyEvent.VK_CONTROL);
        driver.until("it is refused", () -> driver.named("certificate refused").isShowing());
        assertThat(driver.text("certificate refused")).contains("not intact");
        driver.picture("certificate-refused");
        driver.key(KeyEvent.VK_W, KeyEvent.VK_CONTROL);
        driver.until("the findings are shown", () -> driver.focused("findings sheet"));
    }
}
