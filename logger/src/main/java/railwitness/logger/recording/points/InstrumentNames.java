package railwitness.logger.recording.points;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.Identity;
import railwitness.logger.recording.store.InstrumentEntry;

/**
 * By what an instrument is known in other sessions: maker, model, serial number and the date of its calibration, which
 * a newer one may have altered. What has no serial number, such as a meter read by hand, is known in its own session only.
 */
public final class InstrumentNames {
    private final String session;
    private final Map<String, String> names = new HashMap<>();

    /** @param session id of the session */
    public InstrumentNames(String session, List<InstrumentEntry> instruments, Optional<BenchSheet> bench) {
        this.session = session;
        instruments.forEach(
                instrument -> known(instrument, bench).ifPresent(name -> names.put(instrument.name(), name)));
    }

    private static Optional<String> known(InstrumentEntry instrument, Optional<BenchSheet> bench) {
        Identity identity = instrument.identity();
        if (identity.serial().isBlank() || identity.serial().equals("0")) {
            return Optional.empty();
        }
        String calibrated = bench.flatMap(sheet -> sheet.instrument(instrument.name()))
                .flatMap(InstrumentSheet::calibrated)
                .map(date -> " calibrated " + date)
                .orElse("");
        return Optional.of(identity.maker() + "|" + identity.model() + "|" + identity.serial() + calibrated);
    }

    String session() {
        return session;
    }

    /** The same in two sessions exactly where it is the same instrument in the same state of calibration. */
    String of(String instrument) {
        return names.getOrDefault(instrument, session + " " + instrument);
    }
}
