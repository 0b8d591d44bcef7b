package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Collects remarks; numbers in their sentences are written with as many digits as they need. */
final class Remarks {
    static final int ONLY = 0;

    private final List<Remark> all = new ArrayList<>();

    /** @param form a sentence with {@code %s} for each value: numbers and words */
    void cannotBe(String table, int place, String key, String form, Object... values) {
        add(Remark.Weight.CANNOT_BE, table, place, key, form, values);
    }

    void look(String table, int place, String key, String form, Object... values) {
        add(Remark.Weight.LOOK, table, place, key, form, values);
    }

    void add(Remark.Weight weight, String table, int place, String key, String form, Object... values) {
        Object[] words = Stream.of(values)
                .map(value -> value instanceof Double number ? number(number) : value)
                .toArray();
        all.add(new Remark(weight, table, place, key, String.format(java.util.Locale.ROOT, form, words)));
    }

    private static String number(double value) {
        double size = Math.abs(value);
        double digit = size == 0 ? 1 : Math.pow(10, Math.floor(Math.log10(size)) - 2);
        return Allowed.text(Math.round(value / digit) * digit);
    }

    List<Remark> all() {
        return List.copyOf(all);
    }
}
