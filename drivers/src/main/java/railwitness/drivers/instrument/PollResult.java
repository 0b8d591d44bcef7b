package railwitness.drivers.instrument;

import java.util.List;
import java.util.Set;
import railwitness.drivers.reading.Reading;

/** All that one instrument said in one round. */
public record PollResult(String instrument, List<Reading> readings, Set<Condition> conditions) {
    public PollResult {
        readings = List.copyOf(readings);
        conditions = Set.copyOf(conditions);
    }
}
