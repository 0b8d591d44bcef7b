package railwitness.logger.recording.store;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/** Gathers what a verification finds wrong. */
final class FaultList {
    private static final int MOST = 20;

    private final Set<String> faults = new LinkedHashSet<>();
    private OptionalLong firstSecond = OptionalLong.empty();

    void add(String fault) {
        if (faults.size() < MOST) {
            faults.add(fault);
        }
    }

    void addFrom(long second, String fault) {
        if (firstSecond.isEmpty() || second < firstSecond.getAsLong()) {
            firstSecond = OptionalLong.of(second);
        }
        add(fault);
    }

    List<String> faults() {
        return List.copyOf(faults);
    }

    OptionalLong firstSecond() {
        return firstSecond;
    }
}
