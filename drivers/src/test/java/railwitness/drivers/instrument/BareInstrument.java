package railwitness.drivers.instrument;

import java.util.List;
import java.util.Set;

/** An instrument that has nothing but a name. */
record BareInstrument(String name) implements Instrument {
    @Override
    public Identity identity() {
        return new Identity("0", "0", "0", "0");
    }

    @Override
    public PollResult poll() {
        return new PollResult(name, List.of(), Set.of());
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        return true;
    }
}
