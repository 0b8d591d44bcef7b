package railwitness.logger.ui.screen.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.SerialLine;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Row;

/** The bench stage, driven by keys. */
class BenchStageTest extends OnDisplay {
    private static final int VALUE = 3;
    private static final int IDENTITY = 4;

    @BeforeEach
    void atTheBench() {
        driver.key(KeyEvent.VK_2, KeyEvent.VK_CONTROL);
        driver.until("the bench is shown", () -> driver.window().present().equals("bench"));
    }

    @Test
    void virtualInstrumentsAreWatchedAtRest() {
        driver.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
        driver.until("the plus meter reads", () -> !cell("plus meter", VALUE).isEmpty());
        assertThat(cell("plus meter", IDENTITY)).contains("virtual meter");
        driver.until("the last one reads", () -> cell("minus load", VALUE).equals("0.000 A"));
        driver.picture("bench-watched");
        driver.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
        driver.until("nobody watches", () -> cell("plus meter", VALUE).isEmpty());
    }

    @Test
    void anInstrumentThatIsAbsentHidesNoOther() throws IOException {
        try (StandInPorts ports = StandInPorts.open()) {
            Map<String, String> devices = ports.devices();
            devices.put("plus meter", "/dev/there-is-none");
            real(ports.sheet(devices));
            driver.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
            driver.until(
                    "the minus meter reads", () -> !cell("minus meter", VALUE).isEmpty());
            driver.until("it is said why the plus meter does not", () -> cell("plus meter", IDENTITY)
                    .equals("the port is not there"));
            driver.picture("bench-absent");
            driver.key(KeyEvent.VK_ESCAPE);
            driver.until(
                    "it is said what off did", () -> driver.text("line head").contains("are reset"));
            driver.controlEnter();
            driver.until(
                    "the cautions are shown", () -> driver.window().present().equals("cautions"));
            assertThat(driver.window().desk().ports().free()).isTrue();
            SerialLine.open(PortSettings.usual(devices.get("supply"))).close();
            assertThat(ports.switched()).isEmpty();
        }
    }

    @Test
    void closingTheWindowEndsTheWatch() throws IOException {
        try (StandInPorts ports = StandInPorts.open()) {
            real(ports.sheet(ports.devices()));
            driver.key(KeyEvent.VK_L, KeyEvent.VK_CONTROL);
            driver.until("the supply reads", () -> !cell("supply", VALUE).isEmpty());
            driver.cross();
            driver.until("it is closed", () -> !driver.window().frame().isDisplayable());
            driver.until(
                    "the ports are free", () -> driver.window().desk().ports().free());
        }
    }

    @Test
    void foundPortsAreGivenToTheirInstrumentsByKeys() throws IOException {
        try (StandInPorts ports = StandInPorts.open()) {
            Map<String, String> right = ports.devices();
            Map<String, String> swapped = ports.devices();
            swapped.put("plus meter", right.get("minus meter"));
            swapped.put("minus meter", right.get("plus meter"));
            real(ports.sheet(swapped));
            driver.key(KeyEvent.VK_P, KeyEvent.VK_CONTROL);
            driver.until(
                    "the ports have answered",
                    () -> driver.sheet("ports").rows().size() >= right.size());
            driver.until("the list has the focus", () -> driver.focused("ports"));
            give("plus meter");
            driver.until(
                    "one port is given twice", () -> driver.text("line head").startsWith("Faults"));
            driver.picture("bench-twice");
            give("minus meter");
            driver.until(
                    "the sheet is in order again", () -> port("minus meter").equals(right.get("minus meter")));
            assertThat(port("plus meter")).isEqualTo(right.get("plus meter"));
            assertThat(driver.window().desk().sheets().bench().text()).isEqualTo(ports.sheet(right));
            driver.picture("bench-given");
        }
    }

    private boolean answered(String instrument) {
        return driver.ask(() -> driver.sheet("ports").rows().stream()
                .anyMatch(row -> row.cells().get(1).text().contains("," + instrument + ",")));
    }

    /** From the list of ports to the instrument, back, and Enter on the port where it answered. */
    private void give(String instrument) {
        driver.focus("ports");
        driver.key(KeyEvent.VK_LEFT);
        driver.until("the instruments have the focus", () -> driver.focused("instruments"));
        go("instruments", 0, instrument);
        driver.key(KeyEvent.VK_RIGHT);
        driver.until("the ports have the focus", () -> driver.focused("ports"));
        go("ports", 1, "," + instrument + ",");
        driver.key(KeyEvent.VK_ENTER);
    }

    /** As the arrow keys do. */
    private void go(String name, int column, String words) {
        driver.ask(() -> {
            var sheet = driver.sheet(name);
            for (int row = 0; row < sheet.rows().size(); row++) {
                if (sheet.rows().get(row).cells().get(column).text().contains(words)) {
                    sheet.select(row);
                }
            }
            return true;
        });
    }

    private String port(String instrument) {
        return driver.window()
                .desk()
                .sheets()
                .bench()
                .content()
                .instrument(instrument)
                .orElseThrow()
                .port()
                .port();
    }

    @Test
    void instrumentIsAddedAndTakenOut() {
        String before = driver.window().desk().sheets().bench().text();
        driver.key(KeyEvent.VK_I, KeyEvent.VK_CONTROL);
        String place = " "
                + driver.window()
                        .desk()
                        .sheets()
                        .bench()
                        .content()
                        .instruments()
                        .size();
        driver.until("its name can be typed", () -> driver.focused("[[instrument]] name" + place));
        driver.key(KeyEvent.VK_A, KeyEvent.VK_CONTROL);
        driver.type("room");
        driver.focus("[[instrument]] port" + place);
        driver.type("room");
        driver.focus("[[instrument]] port" + place);
        driver.key(KeyEvent.VK_TAB);
        driver.key(KeyEvent.VK_TAB);
        driver.key(KeyEvent.VK_TAB);
        driver.key(KeyEvent.VK_TAB);
        driver.type("ambient.temperature");
        driver.until("it belongs to the bench", () -> driver.window()
                .desk()
                .sheets()
                .bench()
                .content()
                .instrument("room")
                .isPresent());
        driver.picture("bench-added");
        driver.key(KeyEvent.VK_2, KeyEvent.VK_CONTROL);
        driver.press("take out");
        driver.until(
                "it has gone",
                () -> driver.window().desk().sheets().bench().text().equals(before));
    }

    /** Seed 1 of the virtual bench draws errors within what the sheet states, so every zero is good. */
    @Test
    void leadsAreCheckedSentenceBySentence() {
        SheetEdit bench = new SheetEdit(Sheets.demo().bench().text());
        for (int rippleOrShunt : new int[] {6, 5, 2}) {
            bench.takeOut("[[instrument]]", rippleOrShunt);
        }
        driver.ask(() -> {
            Sheets now = driver.window().desk().sheets();
            driver.window()
                    .desk()
                    .sheets(new Sheets(now.design(), Sheets.bench("bench.toml", bench.text()), now.plan()));
            return true;
        });
        driver.key(KeyEvent.VK_K, KeyEvent.VK_CONTROL);
        driver.until("it asks for the first meter", () -> asked("Short the leads of the input meter"));
        driver.picture("bench-leads-asked");
        driver.until("its answer has the focus", () -> driver.focused("answer They are shorted"));
        driver.key(KeyEvent.VK_ENTER);
        driver.until("the zero is judged", () -> leads("input meter, shorted").equals("zero is good"));
        for (String meter : java.util.List.of("plus meter", "minus meter")) {
            driver.until(meter + " is asked for", () -> asked("the " + meter + ":"));
            driver.until("its answer has the focus", () -> driver.focused("answer They are shorted"));
            driver.key(KeyEvent.VK_TAB);
            driver.key(KeyEvent.VK_SPACE);
        }
        driver.until("the leads go back", () -> asked("put each lead back"));
        driver.until("its answer has the focus", () -> driver.focused("answer All are back"));
        driver.key(KeyEvent.VK_ENTER);
        driver.until("the input is compared", () -> leads("input voltage against the supply's")
                .equals("agree"));
        assertThat(leads("plus meter")).isEqualTo("left out");
        assertThat(leads("\u2212 rail voltage at rest")).isEqualTo("at rest");
        driver.picture("bench-leads");
        driver.controlEnter();
        driver.until("the cautions are shown", () -> driver.window().present().equals("cautions"));
    }

    private boolean asked(String words) {
        return driver.named("question") != null && driver.text("question").contains(words);
    }

    private String leads(String what) {
        return driver.ask(() -> driver.sheet("leads").rows().stream()
                .filter(row -> row.cells().get(0).text().equals(what))
                .findFirst()
                .map(row -> row.cells().get(3).text())
                .orElse(""));
    }

    private void real(String sheet) throws IOException {
        Path file = Files.writeString(folder.resolve("bench.toml"), sheet);
        driver.ask(() -> {
            Sheets now = driver.window().desk().sheets();
            driver.window().desk().sheets(new Sheets(now.design(), Sheets.bench(file), now.plan()));
            driver.window().desk().virtualBench(false);
            return true;
        });
    }

    private String cell(String instrument, int column) {
        return driver.ask(() -> driver.sheet("instruments").rows().stream()
                .filter(row -> row.cells().get(0).text().equals(instrument))
                .findFirst()
                .map(Row::cells)
                .map(cells -> cells.get(column))
                .map(Cell::text)
                .orElse(""));
    }
}
