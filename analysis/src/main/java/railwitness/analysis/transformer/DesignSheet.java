package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a design comes to, number by number, each with its formula.
 *
 * @param design it was worked out from
 * @param lines in the order of the work: core, windings, losses, converter
 */
public record DesignSheet(ToroidDesign design, List<DesignLine> lines) {
    public DesignSheet {
        lines = List.copyOf(lines);
    }

    /** Works it out. */
    public static DesignSheet of(ToroidDesign design) {
        List<DesignLine> lines = new ArrayList<>();
        Heat heat = Heat.of(design);
        lines.addAll(CoreLines.of(design));
        lines.addAll(WindingLines.of(design, heat));
        lines.addAll(HeatLines.of(design, heat));
        lines.addAll(ConverterLines.of(design));
        return new DesignSheet(design, lines);
    }

    /** The line that uses most of what it may; empty where none has a limit. */
    public Optional<DesignLine> limiting() {
        return limiting(lines);
    }

    static Optional<DesignLine> limiting(List<DesignLine> lines) {
        return lines.stream()
                .filter(line -> line.share().isPresent())
                .max(Comparator.comparingDouble(line -> line.share().getAsDouble()));
    }

    /** True when no line lies beyond its limit. */
    public boolean holds() {
        return lines.stream().allMatch(DesignLine::holds);
    }

    /** The line of that name. */
    public Optional<DesignLine> line(String name) {
        return lines.stream().filter(line -> line.name().equals(name)).findFirst();
    }
}
