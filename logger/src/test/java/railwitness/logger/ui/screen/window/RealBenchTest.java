package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.fixture.ProgramProcess;
import railwitness.logger.fixture.ShortPlan;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.widgets.Cell;

/** From a bench sheet to findings by keyboard, on instruments that stand behind real serial devices. */
@Timeout(60)
class RealBenchTest {
    private static final String PLAN = ShortPlan.of(0.6, "power-up", "no-load", "load-sweep; loads_pct = [100]");

    private static final String HOLD = ShortPlan.of(0.6, "power-up", "hold; load_pct = 50; duration_s = 600");

    /** As long as it took to be given up once. */
    private static final long FROZEN_NANOS = 11_000_000_000L;

    @TempDir
    private Path folder;

    private StandInPorts ports;
    private WindowDriver driver;

    @BeforeEach
    void open() {
        Display.required();
        ports = StandInPorts.open();
        driver = new WindowDriver(folder);
    }

    @AfterEach
    void close() {
        if (driver != null) {
            driver.close();
        }
        if (ports != null) {
            ports.close();
        }
    }

    @Test
    void sheetWatchPortsCautionsPowerAndFindings() throws IOException {
        Map<String, String> right = ports.devices();
        Map<String, String> swapped = ports.devices();
        swapped.put("plus meter", right.get("minus meter"));
        swapped.put("minus meter", right.get("plus meter"));
        opened(PLAN, ports.sheet(swapped));
        driver.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
        driver.until("the heat sink is read", () -> cell("instruments", "heat-sink meter", 3)
                .endsWith("\u00b0C"));
        driver.key(KeyEvent.VK_P, KeyEvent.VK_CONTROL);
        give("plus meter");
        give("minus meter");
        assertThat(driver.window().desk().sheets().bench().text()).isEqualTo(often(ports.sheet(right)));
        driver.controlEnter();
        driver.until("the cautions are shown", () -> driver.window().present().equals("cautions"));
        assertThat(ports.switched()).isEmpty();
        acknowledge();
        driver.picture("real-cautions");
        driver.controlEnter();
        driver.until("the run is over", () -> driver.run().filter(RunView::over).isPresent());
        driver.picture("real-run");
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.COMPLETE);
        assertThat(ports.switched()).containsExactly(true, false);
        try (SessionFile file = SessionFile.open(session())) {
            assertThat(file.events()).extracting(event -> event.what()).doesNotContain("no guardian");
            assertThat(file.events())
                    .filteredOn(event -> event.what().equals("acknowledged"))
                    .allMatch(event -> event.text().contains("ann other"))
                    .hasSize(1);
        }
        driver.until(
                "the findings are open",
                () -> driver.ask(() -> driver.window().desk().session().isPresent()));
        driver.controlEnter();
        driver.until(
                "the findings are shown",
                () -> !driver.sheet("findings sheet").rows().isEmpty());
        driver.picture("real-findings");
    }

    @Test
    void escapeSendsOffToTheSupply() throws IOException {
        lay(HOLD, Sheets.bench("bench.toml", often(ports.sheet(ports.devices()))));
        driver.ask(() -> {
            driver.window().desk().virtualBench(false);
            return true;
        });
        driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
        driver.until("the cautions are shown", () -> driver.window().present().equals("cautions"));
        acknowledge();
        driver.controlEnter();
        driver.until(
                "the load is held",
                () -> driver.run().filter(view -> view.liveStep() >= 0).isPresent());
        assertThat(ports.outputOn()).isTrue();
        driver.key(KeyEvent.VK_ESCAPE);
        driver.until("the supply was told off", () -> !ports.outputOn());
        driver.until("all is over", () -> driver.run().filter(RunView::over).isPresent());
        driver.until("it says so", () -> driver.text("band title").equals("Output is off"));
        assertThat(ports.switched()).containsExactly(true, false);
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.STOPPED);
        driver.picture("real-stopped");
    }

    /** The band says plainly that off is not confirmed; Escape sends it again; the run ends with the supply's word. */
    @Test
    @Timeout(180)
    void aSupplyThatStandsStillIsToldOffUntilItSaysSo() throws IOException {
        lay(HOLD, Sheets.bench("bench.toml", often(ports.sheet(ports.devices()))));
        driver.ask(() -> {
            driver.window().desk().virtualBench(false);
            return true;
        });
        driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
        driver.until("the cautions are shown", () -> driver.window().present().equals("cautions"));
        acknowledge();
        driver.controlEnter();
        driver.until(
                "the load is held",
                () -> driver.run().filter(view -> view.liveStep() >= 0).isPresent());
        ports.supplyStandsStill();
        driver.until("it is told", () -> driver.text("band title").equals("NOT CONFIRMED OFF"));
        driver.picture("real-not-confirmed");
        for (int pressed = 0; pressed < 3; pressed++) {
            driver.key(KeyEvent.VK_ESCAPE);
            assertThat(driver.ask(() -> driver.window().desk().message()))
                    .startsWith("Switching off")
                    .doesNotContain("No supply is connected");
            assertThat(driver.text("band title")).isEqualTo("NOT CONFIRMED OFF");
        }
        assertThat(driver.ask(() -> driver.window().desk().running())).isTrue();
        driver.until("the supply goes on and obeys", () -> !ports.outputOn());
        driver.until("all is over", () -> driver.run().filter(RunView::over).isPresent());
        driver.until("it says so", () -> driver.text("band title").equals("Tripped, output is off"));
        assertThat(driver.run().orElseThrow().ended().orElseThrow().state()).isEqualTo(SessionState.TRIPPED);
    }

    /**
     * The computer behind all ten ports stands still at half load, and goes on after longer than anybody waits: the band
     * says what is so, Escape sends off again, and the run ends with the supply's own word.
     */
    @Test
    @Timeout(180)
    void aBenchOfAnotherProcessThatIsFrozenIsToldOffUntilItSaysSo() throws Exception {
        Path sheet = folder.resolve("stand-in.toml");
        Path design = Files.writeString(
                folder.resolve("design.toml"),
                StandInPorts.quickToDischarge().design().text());
        ProgramProcess far = ProgramProcess.started(
                folder.resolve("far.txt"), "stand-in", "--design", design.toString(), "--bench-out", sheet.toString());
        try {
            far.await("the stand-in", () -> said(far).contains("ready"));
            lay(HOLD, Sheets.bench("bench.toml", often(Files.readString(sheet))));
            driver.ask(() -> {
                driver.window().desk().virtualBench(false);
                return true;
            });
            driver.key(KeyEvent.VK_3, KeyEvent.VK_CONTROL);
            driver.until(
                    "the cautions are shown", () -> driver.window().present().equals("cautions"));
            acknowledge();
            driver.controlEnter();
            driver.until(
                    "the load is held",
                    () -> driver.run().filter(view -> view.liveStep() >= 0).isPresent());
            assertThat(said(far).strip()).endsWith("supply output on");
            far.signal("STOP");
            long frozen = System.nanoTime();
            driver.until("it is told", () -> driver.text("band title").equals("NOT CONFIRMED OFF"));
            while (System.nanoTime() - frozen < FROZEN_NANOS) {
                driver.key(KeyEvent.VK_ESCAPE);
                assertThat(driver.ask(() -> driver.window().desk().message()))
                        .startsWith("Switching off")
                        .doesNotContain("No supply is connected");
                assertThat(driver.text("band title")).isEqualTo("NOT CONFIRMED OFF");
                assertThat(driver.ask(() -> driver.window().desk().running())).isTrue();
                Thread.sleep(500);
            }
            far.signal("CONT");
            far.await("the supply obeys", () -> said(far).strip().endsWith("supply output off"));
            driver.until("all is over", () -> driver.run().filter(RunView::over).isPresent());
            driver.until("it says so", () -> driver.text("band title").equals("Tripped, output is off"));
        } finally {
            far.signal("CONT");
            far.process().destroy();
        }
    }

    private static String said(ProgramProcess process) {
        try {
            return Files.readString(process.said());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Unit and plan lie on the desk; the bench sheet is opened as a person opens it. */
    private void opened(String plan, String bench) throws IOException {
        Path file = Files.writeString(folder.resolve("bench.toml"), often(bench));
        lay(plan, Sheets.demo().bench());
        driver.key(KeyEvent.VK_2, KeyEvent.VK_CONTROL);
        driver.focus("instruments");
        driver.key(KeyEvent.VK_O, KeyEvent.VK_CONTROL);
        driver.type(file.toString(), KeyEvent.VK_A, KeyEvent.VK_ENTER);
        driver.until(
                "the bench sheet is there",
                () -> driver.window().desk().sheets().bench().text().contains("/dev/"));
        driver.press("real bench");
        driver.until("the real bench is chosen", () -> !driver.window().desk().virtualBench());
    }

    private void lay(String plan, SheetText<BenchSheet> bench) {
        driver.ask(() -> {
            driver.window()
                    .desk()
                    .sheets(new Sheets(
                            StandInPorts.quickToDischarge().design(), bench, Sheets.plan("plan.toml", plan)));
            return true;
        });
    }

    /** The same bench, asked more often. */
    private static String often(String bench) {
        return bench.replace("interval_s = 0.5 ", "interval_s = 0.25 ");
    }

    private void give(String instrument) {
        String answer = "," + instrument + ",";
        driver.until(instrument + " has answered", () -> rowOf("ports", 1, answer) >= 0);
        driver.focus("instruments");
        select("instruments", rowOf("instruments", 0, instrument));
        driver.key(KeyEvent.VK_RIGHT);
        select("ports", rowOf("ports", 1, answer));
        driver.key(KeyEvent.VK_ENTER);
    }

    private void select(String sheet, int row) {
        driver.ask(() -> {
            driver.sheet(sheet).select(row);
            return true;
        });
    }

    private int rowOf(String sheet, int column, String words) {
        return driver.ask(() -> {
            var rows = driver.sheet(sheet).rows();
            for (int row = 0; row < rows.size(); row++) {
                if (rows.get(row).cells().get(column).text().contains(words)) {
                    return row;
                }
            }
            return -1;
        });
    }

    private String cell(String sheet, String first, int column) {
        int row = rowOf(sheet, 0, first);
        return row < 0
                ? ""
                : driver.ask(() -> {
                    List<Cell> cells = driver.sheet(sheet).rows().get(row).cells();
                    return cells.get(column).text();
                });
    }

    /** Every box ticked, every cold resistance and the name typed. */
    private void acknowledge() {
        for (String name : names(driver.window().frame(), "check ")) {
            driver.press(name);
        }
        for (String name : names(driver.window().frame(), "ohms ")) {
            driver.focus(name);
            driver.type("200000");
        }
        driver.focus("person");
        driver.type("ann other");
        driver.until("nothing is open", () -> driver.text("line head").startsWith("All checks done"));
    }

    private List<String> names(Container in, String beginning) {
        return driver.ask(() -> {
            List<String> found = new ArrayList<>();
            collect(in, beginning, found);
            return found;
        });
    }

    private static void collect(Container in, String beginning, List<String> found) {
        for (Component one : in.getComponents()) {
            if (one.getName() != null && one.getName().startsWith(beginning)) {
                found.add(one.getName());
            }
            if (one instanceof Container inner) {
                collect(inner, beginning, found);
            }
        }
    }

    private Path session() throws IOException {
        try (var all = Files.list(folder)) {
            return all.filter(file -> file.toString().endsWith(".session"))
                    .findFirst()
                    .orElseThrow();
        }
    }
}
