package railwitness.drivers.sheet;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * A key being asked for. End the question with {@link #required}, {@link #orElse} or {@link #optional}. After a fault
 * the answer is a stand-in; the sheet's reading then ends with an exception.
 */
public class SheetKey<T> {
    private final KeyPlace place;
    private final Predicate<Object> isOfType;
    private final Function<Object, T> taken;
    private final T standIn;
    private Predicate<T> rule = value -> true;
    private String allowed = "";

    SheetKey(KeyPlace place, Predicate<Object> isOfType, Function<Object, T> taken, T standIn) {
        this.place = place;
        this.isOfType = isOfType;
        this.taken = taken;
        this.standIn = standIn;
    }

    /** Adds a rule with the words that say what it allows, such as {@code below 3 V}. */
    public SheetKey<T> allow(Predicate<T> added, String words) {
        rule = rule.and(added);
        allowed = allowed.isEmpty() ? words : allowed + ", " + words;
        return this;
    }

    /** The value; a fault when it is left out. */
    public T required() {
        place.note(allowed, "required");
        if (place.value() == null) {
            place.missing(allowed);
            return standIn;
        }
        return checked();
    }

    /** The value, or this one when it is left out. */
    public T orElse(T otherwise) {
        place.note(allowed, String.valueOf(otherwise));
        return place.value() == null ? otherwise : checked();
    }

    /** The value, where it is given. */
    public Optional<T> optional() {
        place.note(allowed, "optional");
        return place.value() == null ? Optional.empty() : Optional.of(checked());
    }

    private T checked() {
        Object raw = place.value();
        if (!isOfType.test(raw)) {
            place.refuse("must be a " + place.type() + (allowed.isEmpty() ? "" : ", " + allowed));
            return standIn;
        }
        Optional<String> excess = Excess.in(raw);
        if (excess.isPresent()) {
            place.refuse(excess.get());
            return standIn;
        }
        T value = taken.apply(raw);
        if (!rule.test(value)) {
            place.refuse("is not allowed: must be " + allowed);
            return standIn;
        }
        return value;
    }

    String unit() {
        return place.unit();
    }
}
