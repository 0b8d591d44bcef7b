package railwitness.logger.reporting.findings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.TimeSpan;

/** A session as it would have been recorded, had something been wrong with the bench. */
final class ForgedCopy {
    private ForgedCopy() {}

    static Path of(Path session, Forgery forgery, Path out) {
        try (SessionFile from = SessionFile.open(session);
                SessionWriter to = SessionWriter.create(out, from.head())) {
            from.sheets().forEach(to::add);
            readings(from, forgery).forEach(to::reading);
            from.steps().forEach(to::add);
            to.finish(SessionState.COMPLETE);
        }
        return out;
    }

    private static List<Reading> readings(SessionFile from, Forgery forgery) {
        long frozenNanos = from.steps().get(forgery.frozenFromStep()).beginNanos();
        List<Reading> all = new ArrayList<>();
        List<Channel> names = new ArrayList<>(from.channels());
        names.addAll(forgery.added(Set.copyOf(names)));
        for (Channel name : names) {
            Channel source = forgery.source(name);
            Map<Channel, Double> kept = new HashMap<>();
            from.readings(source, TimeSpan.ALL, reading -> {
                if (reading instanceof Measured measured) {
                    boolean frozen = forgery.frozen().contains(name.toString())
                            && measured.requestedNanos() >= frozenNanos
                            && kept.containsKey(name);
                    double value = frozen
                            ? kept.get(name) * (1 + forgery.shaking() * Math.sin(all.size()))
                            : forgery.shown(name, measured.value());
                    if (!frozen) {
                        kept.put(name, value);
                    }
                    all.add(new Measured(name, value, measured.requestedNanos(), measured.repliedNanos()));
                }
            });
        }
        all.sort(Comparator.comparingLong(Reading::repliedNanos));
        return all;
    }
}
