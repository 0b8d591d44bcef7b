package railwitness.drivers.sheet;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A word that stands for a value. */
final class ChoiceKey<E> extends SheetKey<E> {
    private final TextKey text;
    private final List<E> values;
    private final Function<E, String> word;

    ChoiceKey(KeyPlace place, List<E> values, Function<E, String> word) {
        super(place, raw -> false, raw -> values.get(0), values.get(0));
        this.values = values;
        this.word = word;
        text = new TextKey(place);
        text.oneOf(values.stream().map(word).collect(Collectors.toList()).toArray(new String[0]));
    }

    @Override
    public E required() {
        return valueOf(text.required());
    }

    @Override
    public E orElse(E otherwise) {
        return valueOf(text.orElse(word.apply(otherwise)));
    }

    @Override
    public Optional<E> optional() {
        return text.optional().map(this::valueOf);
    }

    private E valueOf(String found) {
        return values.stream()
                .filter(value -> word.apply(value).equals(found))
                .findFirst()
                .orElse(values.get(0));
    }
}
