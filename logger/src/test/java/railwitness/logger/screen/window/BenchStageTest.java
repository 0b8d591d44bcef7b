package railwitness.logger.screen.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.SerialLine;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.sheet.Sheets;

/** The bench stage, driven by keys. */
class BenchStageTest {
    private static final int VALUE = 3;
    private static final int IDENTITY = 4;

    @TempDir
    private Path folder;

    private WindowDriver driver;

    @BeforeEach
    void open() {
        Optional<String> lacking = Display.lacking();
        lacking.ifPresent(System.out::println);
        assumeTrue(lacking.isEmpty(), () -> lacking.orElse(""));
        driver = new WindowDriver(folder);
        driver.key(KeyEvent.VK_2, KeyEvent.VK_CONTROL);
        driver.until("the bench is shown", () -> driver.window().present().equals("bench"));
    }

    @AfterEach
    void close() {
        if (driver != null) {
            driver.close();
        }
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
