package railwitness.drivers.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import railwitness.drivers.line.PeerTerminal;

/**
 * Serves a virtual bench over real pseudo-terminals in real time, one thread for each instrument. Clients may come and
 * go. Needs a system with pseudo-terminals.
 */
public final class StandIn implements AutoCloseable {
    /**
     * Where an instrument is reached.
     *
     * @param device path to open like a serial port
     */
    public record Place(String name, String device) {}

    private record Served(VirtualInstrument instrument, PeerTerminal terminal) {}

    private final List<Served> served = new ArrayList<>();

    /**
     * Begins to serve.
     *
     * @param bench on a real clock
     * @param onSwitched told a supply's name and whether its output is on, at each change
     */
    public StandIn(VirtualBench bench, BiConsumer<String, Boolean> onSwitched) {
        try {
            for (VirtualInstrument instrument : bench.instruments()) {
                Fixture fixture = instrument.fixture();
                if (instrument instanceof VirtualSupply supply) {
                    supply.onSwitched(on -> onSwitched.accept(fixture.name(), on));
                }
                served.add(new Served(
                        instrument,
                        new PeerTerminal(
                                fixture.name(), instrument, fixture.talk().terminator())));
            }
        } catch (RuntimeException failed) {
            close();
            throw failed;
        }
    }

    /** Every instrument and its device, in the order of the bench. */
    public List<Place> places() {
        return served.stream()
                .map(each -> new Place(
                        each.instrument().fixture().name(), each.terminal().device()))
                .toList();
    }

    /** Ends all threads and takes the devices away. */
    @Override
    public void close() {
        served.forEach(each -> each.terminal().close());
        served.clear();
    }
}
