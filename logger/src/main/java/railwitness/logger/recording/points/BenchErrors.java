package railwitness.logger.recording.points;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import railwitness.analysis.uncertainty.Influence;

/**
 * The unknown errors of a bench's instruments, each one once. Two sessions worked out with the same errors are
 * correlated through the instruments they share, so that these errors fall out of a difference as far as they may.
 */
public final class BenchErrors {
    private final Map<String, Influence> influences = new HashMap<>();

    /** The one of that key; made the first time it is asked for. */
    Influence of(String key, Supplier<Influence> first) {
        return influences.computeIfAbsent(key, name -> first.get());
    }
}
