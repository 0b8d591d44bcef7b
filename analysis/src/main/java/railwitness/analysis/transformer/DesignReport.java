package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A design sheet's transformer, worked out as far as the sheet goes.
 *
 * @param wound what the sheet says
 * @param toroid as it is meant to be wound; empty where the sheet does not give the core's size
 * @param drive of the primary, with what was taken where the sheet says nothing
 * @param lines number by number
 * @param gaps what the sheet does not say and what that costs
 */
public record DesignReport(
        WoundDesign wound, Optional<ToroidDesign> toroid, Drive drive, List<DesignLine> lines, List<SheetGap> gaps) {
    public DesignReport {
        lines = List.copyOf(lines);
        gaps = List.copyOf(gaps);
    }

    /**
     * Works it out.
     *
     * @throws IllegalArgumentException where the sheet has no turns, or what it says cannot be
     */
    public static DesignReport of(WoundDesign wound) {
        DesignBasis basis = new DesignBasis(wound);
        basis.turns();
        Drive drive = basis.drive();
        Optional<ToroidDesign> toroid = wound.parts().size().map(size -> basis.toroid(size, drive));
        List<DesignLine> lines = new ArrayList<>();
        if (toroid.isPresent()) {
            DesignSheet.of(toroid.get()).lines().stream()
                    .filter(line -> basis.loadsKnown() || !restsOnLoads(line))
                    .forEach(lines::add);
        } else {
            lines.addAll(withoutCore(wound, basis, drive));
        }
        RailLines rails = new RailLines(wound.design(), toroid);
        lines.addAll(rails.lines());
        List<String> missing = rails.missing();
        if (!missing.isEmpty()) {
            basis.gap(String.join(", ", missing), "the rails under load and their sag cannot be foretold");
        }
        return new DesignReport(wound, toroid, drive, new OwnTurns(wound.design()).joined(lines, toroid), basis.gaps());
    }

    private static boolean restsOnLoads(DesignLine line) {
        return line.name().startsWith(WindingLines.DENSITY)
                || line.name().startsWith(HeatLines.COPPER_LOSS)
                || line.name().equals(HeatLines.TEMPERATURE)
                || line.name().equals(HeatLines.RISE)
                || line.name().equals(ConverterLines.LEAKAGE)
                || line.name().startsWith("resistance warm")
                || line.name().startsWith("alternating");
    }

    private static List<DesignLine> withoutCore(WoundDesign wound, DesignBasis basis, Drive drive) {
        var turns = basis.turns();
        List<DesignLine> lines = new ArrayList<>();
        lines.add(CoreLines.voltSeconds(drive));
        OptionalDouble area = turns.coreAreaSquareMillimetres();
        area.ifPresent(squareMillimetres -> lines.add(CoreLines.flux(
                drive, turns.primaryTurns(), squareMillimetres * 1e-6, turns.highestFluxTesla(), basis.material())));
        basis.gap(
                "[core] outer_mm, inner_mm and height_mm",
                (area.isPresent() ? "" : "no flux density; ")
                        + "no inductance, wire length, resistance, window fill, loss and temperature");
        lines.add(WindingLines.skin(drive));
        lines.add(ConverterLines.ratio(turns.primaryTurns(), turns.secondaryTurns()));
        lines.add(ConverterLines.stress(drive, basis.switchRating()));
        return lines;
    }

    /** The line that uses most of what it may; empty where none has a limit. */
    public Optional<DesignLine> limiting() {
        return DesignSheet.limiting(lines);
    }

    /** True when no line lies beyond its limit. */
    public boolean holds() {
        return lines.stream().allMatch(DesignLine::holds);
    }

    /** In one sentence: which line limits, or which lie beyond their limits. */
    public String verdict() {
        return DesignWords.verdict(this);
    }
}
