package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;

/**
 * Rails that are fed by turns of their own: each such number of turns is taken as one more pair of halves, of the secondary's
 * wire. A tap of the secondary takes less room than that.
 */
final class OwnTurns {
    private final Design design;
    private final Map<Integer, List<String>> rails = new LinkedHashMap<>();

    OwnTurns(Design design) {
        this.design = design;
        int common = design.transformer().orElseThrow().secondaryTurns();
        for (Rail rail : design.rails()) {
            if (rail.secondaryTurns().isPresent() && rail.secondaryTurns().getAsInt() != common) {
                rails.computeIfAbsent(rail.secondaryTurns().getAsInt(), turns -> new ArrayList<>())
                        .add(rail.name());
            }
        }
    }

    /** The lines, those of these turns with what they add; the window fill counts them in. */
    List<DesignLine> joined(List<DesignLine> lines, Optional<ToroidDesign> toroid) {
        if (rails.isEmpty()) {
            return lines;
        }
        List<DesignLine> all = new ArrayList<>();
        for (DesignLine line : lines) {
            all.add(line.name().equals(WindingLines.FILL) && toroid.isPresent() ? fill(line, toroid.get()) : line);
        }
        rails.forEach((turns, names) -> {
            String whose = String.join(" and ", names);
            all.add(ConverterLines.ratio(design.transformer().orElseThrow().primaryTurns(), turns)
                    .named("turns ratio, " + whose));
            toroid.ifPresent(ring -> all.add(DesignLine.of(
                            "resistance at 20 degC, half of " + whose,
                            1e3
                                    * new Windings(ring)
                                            .ohms(
                                                    new Winding(
                                                            turns,
                                                            ring.secondary().wire()),
                                                    20),
                            "mohm",
                            "length x 1.7241e-8 ohm m / copper",
                            "IEC 60028")
                    .weak("taken with the secondary's wire")));
        });
        return all;
    }

    private DesignLine fill(DesignLine line, ToroidDesign ring) {
        double more = rails.keySet().stream()
                .mapToDouble(turns -> new Winding(turns, ring.secondary().wire()).windowSquareMetres())
                .sum();
        return line.plus(100 * more / ring.core().windowSquareMetres())
                .weak("rails with turns of their own taken as windings of their own, of the secondary's wire");
    }
}
