package railwitness.analysis.verdict;

import java.util.Objects;
import java.util.Optional;

/**
 * One line of what the unit must keep.
 *
 * @param name the requirement's name, as printed
 * @param figure the name of the figure it holds against the limit
 * @param rail the rail it is about, absent where it is of no single rail
 * @param limit in the figure's unit
 */
public record Requirement(String name, String figure, Optional<String> rail, Limit limit) {
    public Requirement {
        Objects.requireNonNull(rail, "rail");
        Objects.requireNonNull(limit, "limit");
        if (name.isBlank() || figure.isBlank()) {
            throw new IllegalArgumentException(
                    "requirement '" + name + "' on figure '" + figure + "': both need a name");
        }
    }
}
