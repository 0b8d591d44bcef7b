package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.Transformer;

/**
 * Turns to choose from, on the sheet's own core and on usual ring cores.
 *
 * @param wound what the sheet says
 * @param own each number of primary turns on the sheet's core that is near to fitting, in order of turns; empty where
 *     the sheet gives no core
 * @param rings the least lossy choice on each usual ring, smallest ring first; where none fits the nearest to fitting
 * @param gaps what the sheet does not say
 */
public record ProposalReport(WoundDesign wound, List<DesignSheet> own, List<DesignSheet> rings, List<SheetGap> gaps) {
    private static final int MOST_TURNS = 40;
    private static final int SHOWN = 12;

    public ProposalReport {
        own = List.copyOf(own);
        rings = List.copyOf(rings);
        gaps = List.copyOf(gaps);
    }

    /**
     * Works them out.
     *
     * @throws IllegalArgumentException where a rail's full load is not known
     */
    public static ProposalReport of(WoundDesign wound) {
        DesignBasis basis = new DesignBasis(wound);
        Drive drive = basis.drive();
        if (!basis.loadsKnown()) {
            throw new IllegalArgumentException(
                    "[[rail]] full_load_A is missing; turns can be proposed only where each rail's full load is known");
        }
        CoreMaterial material = basis.material();
        Proposal any = proposal(RingSizes.of(material).get(0), wound, basis, drive);
        List<DesignSheet> rings = RingSizes.of(material).stream()
                .map(core -> best(with(any, core)))
                .toList();
        List<DesignSheet> own = wound.parts()
                .size()
                .map(size -> near(with(any, new DesignBasis(wound).core(size))))
                .orElse(List.of());
        if (wound.parts().size().isEmpty()) {
            basis.gap("[core] outer_mm, inner_mm and height_mm", "no turns for a core of your own, usual rings only");
        }
        return new ProposalReport(wound, own, rings, basis.gaps());
    }

    private static Proposal proposal(Core core, WoundDesign wound, DesignBasis basis, Drive drive) {
        return new Proposal(
                core,
                drive,
                basis.workingVolts(drive),
                basis.rails(),
                basis.ambient(),
                basis.highestDegC(),
                wound.design()
                        .transformer()
                        .map(Transformer::highestFluxTesla)
                        .orElse(java.util.OptionalDouble.empty()));
    }

    private static Proposal with(Proposal any, Core core) {
        return new Proposal(
                core,
                any.drive(),
                any.workingVolts(),
                any.rails(),
                any.ambientDegC(),
                any.highestDegC(),
                any.highestFluxTesla());
    }

    private static DesignSheet best(Proposal proposal) {
        return proposal.all().stream().findFirst().orElseGet(() -> nearest(proposal));
    }

    /** Where no number of turns keeps every limit: the one that misses by least. */
    private static DesignSheet nearest(Proposal proposal) {
        DesignSheet nearest = DesignSheet.of(proposal.with(1));
        for (int turns = 2; turns <= MOST_TURNS; turns++) {
            DesignSheet sheet = DesignSheet.of(proposal.with(turns));
            if (share(sheet) < share(nearest)) {
                nearest = sheet;
            }
        }
        return nearest;
    }

    /** Those that fit with one neighbour on each side that does not; about the nearest one where none fits. */
    private static List<DesignSheet> near(Proposal proposal) {
        List<DesignSheet> all = new ArrayList<>();
        int first = 0;
        int last = 0;
        for (int turns = 1; turns <= MOST_TURNS; turns++) {
            all.add(DesignSheet.of(proposal.with(turns)));
            if (all.get(turns - 1).holds()) {
                first = first == 0 ? turns : first;
                last = turns;
            }
        }
        if (first == 0) {
            first = nearest(proposal).design().primary().turns();
            last = first;
        }
        int from = Math.max(1, first - 1);
        int to = Math.min(Math.min(MOST_TURNS, last + 1), from + SHOWN - 1);
        return all.subList(from - 1, to);
    }

    private static double share(DesignSheet sheet) {
        return sheet.limiting().map(line -> line.share().getAsDouble()).orElse(0.0);
    }

    /** The choice on the sheet's own core that loses least while it keeps every limit. */
    public Optional<DesignSheet> best() {
        return own.stream().filter(DesignSheet::holds).min(java.util.Comparator.comparingDouble(Proposal::watts));
    }
}
