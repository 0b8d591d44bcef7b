package railwitness.drivers.rehearsal;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;

/** The troubles of one instrument: those to come and those there are. */
final class Troubles {
    private record Planned(Trouble trouble, long fromNanos, long fromExchange) {}

    private final Set<Planned> planned = new HashSet<>();
    private final Set<Trouble> active = EnumSet.noneOf(Trouble.class);

    void from(Trouble trouble, long nanos) {
        planned.add(new Planned(trouble, nanos, Long.MAX_VALUE));
    }

    void fromExchange(Trouble trouble, long exchange) {
        planned.add(new Planned(trouble, Long.MAX_VALUE, exchange));
    }

    /** Lets those begin whose time or exchange has come. */
    void look(long nanos, long exchange) {
        planned.removeIf(p -> {
            boolean due = nanos >= p.fromNanos() || exchange >= p.fromExchange();
            if (due) {
                active.add(p.trouble());
            }
            return due;
        });
    }

    boolean has(Trouble trouble) {
        return active.contains(trouble);
    }

    void end(Trouble trouble) {
        active.remove(trouble);
    }

    void clear() {
        planned.clear();
        active.clear();
    }
}
