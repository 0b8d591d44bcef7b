package railwitness.drivers.sheet;

import java.util.List;
import org.tomlj.TomlArray;

/** A list of numbers being asked for, such as {@code [25, 50, 75, 100]}. */
public final class NumbersKey extends SheetKey<List<Double>> {
    NumbersKey(KeyPlace place) {
        super(place, NumbersKey::areNumbers, NumbersKey::taken, List.of());
    }

    private static boolean areNumbers(Object raw) {
        return raw instanceof TomlArray array && array.toList().stream().allMatch(NumberKey::isFinite);
    }

    private static List<Double> taken(Object raw) {
        return ((TomlArray) raw)
                .toList().stream().map(value -> ((Number) value).doubleValue()).toList();
    }

    /** Each of them, both ends included. */
    public NumbersKey between(double lowest, double highest) {
        allow(
                values -> values.stream().allMatch(v -> v >= lowest && v <= highest),
                "each " + Bounds.between(lowest, highest, unit()));
        return this;
    }

    /** How many there must be. */
    public NumbersKey count(int fewest, int most) {
        allow(values -> values.size() >= fewest && values.size() <= most, countWords(fewest, most));
        return this;
    }

    private static String countWords(int fewest, int most) {
        if (most == Integer.MAX_VALUE) {
            return fewest + " or more of them";
        }
        return fewest == most ? fewest + " of them" : fewest + " to " + most + " of them";
    }
}
