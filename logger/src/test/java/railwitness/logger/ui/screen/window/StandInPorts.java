package railwitness.logger.ui.screen.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Assumptions;
import railwitness.drivers.line.PseudoTerminal;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.rehearsal.PortsOnSheet;
import railwitness.logger.recording.sheet.Sheets;

/** The demo's instruments on real serial devices, for a window that takes them for real ones. */
final class StandInPorts implements AutoCloseable {
    private final Sheets sheets = quickToDischarge();
    private final long origin = System.nanoTime();
    private final VirtualBench bench = FixtureMaker.bench(sheets, List.of(), 1, () -> System.nanoTime() - origin);
    private final List<Boolean> switched = new CopyOnWriteArrayList<>();
    private final StandIn standIn;

    private StandInPorts() {
        standIn = new StandIn(bench, (supply, on) -> switched.add(on));
    }

    /** The demo's unit with small capacitors and strong bleeders, for nobody wants to wait for its rails to empty. */
    static Sheets quickToDischarge() {
        Sheets demo = Sheets.demo();
        String design = demo.design()
                .text()
                .replace("capacitor_uF = 4400 ", "capacitor_uF = 1000 ")
                .replace("bleeder_ohm = 3300", "bleeder_ohm = 400")
                .replace("no_load_input_A = 1.0", "no_load_input_A = 2.0");
        return new Sheets(Sheets.design("design.toml", design), demo.bench(), demo.plan());
    }

    /** Skips the test, saying why, where there are no pseudo-terminals. */
    static StandInPorts open() {
        if (!PseudoTerminal.available()) {
            System.out.println("skipped: this system has no pseudo-terminals");
        }
        Assumptions.assumeTrue(PseudoTerminal.available(), "this system has no pseudo-terminals");
        return new StandInPorts();
    }

    /** Device of each instrument, by its name. */
    Map<String, String> devices() {
        Map<String, String> devices = new HashMap<>();
        standIn.places().forEach(place -> devices.put(place.name(), place.device()));
        return devices;
    }

    /** The demo's bench sheet with these devices. */
    String sheet(Map<String, String> devices) {
        return PortsOnSheet.changed(sheets.bench(), devices);
    }

    /** Each change of the supply's output so far: true for on. */
    List<Boolean> switched() {
        return List.copyOf(switched);
    }

    boolean outputOn() {
        return bench.supply("supply").isOn();
    }

    /** From the next question on, for longer than anybody waits. */
    void supplyStandsStill() {
        bench.supply("supply").trouble(Trouble.STANDS_STILL);
    }

    @Override
    public void close() {
        standIn.close();
    }
}
