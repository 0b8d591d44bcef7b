package railwitness.logger.reporting.comparing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import railwitness.analysis.uncertainty.Estimate;

/**
 * One number in all sessions.
 *
 * @param name of the figure or quantity
 * @param rail of which rail; empty where it is not of one
 * @param unit SI
 * @param values one for each session, in their order; empty where it was not found
 * @param expected what each session's design sheet leads to expect, where it bounds it; empty for what is no figure
 * @param notes of each session: at which points it holds; empty where there is no such note
 */
public record Compared(
        String name,
        Optional<String> rail,
        String unit,
        List<Optional<Estimate>> values,
        List<Optional<Estimate>> expected,
        List<String> notes) {
    public Compared {
        values = List.copyOf(values);
        expected = List.copyOf(expected);
        notes = List.copyOf(notes);
    }

    static <T> Compared of(
            String name, Optional<String> rail, String unit, List<T> sessions, Function<T, Optional<Estimate>> value) {
        return new Compared(name, rail, unit, sessions.stream().map(value).toList(), List.of(), List.of());
    }

    /** Such as "output resistance, plus". */
    public String label() {
        return name + rail.map(one -> ", " + one).orElse("");
    }

    /** Each later session against the first; empty where either has no value. The first entry is always empty. */
    public List<Optional<Change>> changes() {
        List<Optional<Change>> changes = new ArrayList<>();
        Optional<Estimate> first = values.get(0);
        changes.add(Optional.empty());
        for (Optional<Estimate> later : values.subList(1, values.size())) {
            changes.add(first.flatMap(a -> later.map(b -> Change.of(a, b))));
        }
        return changes;
    }

    /** The same in another unit. */
    public Compared scaled(double scale, String wanted) {
        return new Compared(name, rail, wanted, scaled(values, scale), scaled(expected, scale), notes);
    }

    private static List<Optional<Estimate>> scaled(List<Optional<Estimate>> all, double scale) {
        return all.stream().map(one -> one.map(known -> known.scale(scale))).toList();
    }

    /** Decimals for all values side by side: as fine as one of them, or one difference to the first, is known. */
    public int places() {
        return Print.places(this);
    }

    boolean inAll() {
        return values.stream().allMatch(Optional::isPresent);
    }

    boolean inAny() {
        return values.stream().anyMatch(Optional::isPresent);
    }

    /** True where the sessions have it at points of their own, which a difference then also holds. */
    public boolean atOtherPoints() {
        return notes.stream().filter(note -> !note.isEmpty()).distinct().count() > 1;
    }
}
