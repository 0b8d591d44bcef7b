package railwitness.analysis.supply;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;

/**
 * All figures of a set of points, and those they cannot give.
 *
 * @param found in the order of {@link FigureName}, rail by rail
 * @param notFound in the same order
 */
public record Figures(List<Figure> found, List<NotFound> notFound) {
    public Figures {
        found = List.copyOf(found);
        notFound = List.copyOf(notFound);
    }

    /** Works out every figure; the order of the points does not matter. */
    public static Figures of(List<OperatingPoint> points, Optional<Design> design, RippleMeans ripple) {
        Ledger ledger = new Ledger();
        Points sorted = new Points(points, design);
        new LineFigures(sorted, ledger).enter();
        new LoadFigures(sorted, ledger).enter();
        new CrossFigures(sorted, ledger).enter();
        new PowerFigures(sorted, ledger).enter();
        new RippleFigures(sorted, ripple, ledger).enter();
        return ledger.close();
    }

    /** The figure of that name and rail, if found. */
    public Optional<Figure> find(FigureName name, Optional<String> rail) {
        return found.stream()
                .filter(figure -> figure.name() == name && figure.rail().equals(rail))
                .findFirst();
    }

    /** The value of a rail's figure, if found. */
    public Optional<Estimate> value(FigureName name, String rail) {
        return find(name, Optional.of(rail)).map(Figure::value);
    }

    /** The value of a figure of no rail, if found. */
    public Optional<Estimate> value(FigureName name) {
        return find(name, Optional.empty()).map(Figure::value);
    }

    /** Collects figures as they are worked out. */
    static final class Ledger {
        private final List<Figure> found = new ArrayList<>();
        private final List<NotFound> notFound = new ArrayList<>();

        void enter(FigureName name, Optional<String> rail, Estimate value, String at) {
            found.add(new Figure(name, rail, value, at, name.definition()));
        }

        void miss(FigureName name, Optional<String> rail, String reason) {
            notFound.add(new NotFound(name, rail, reason));
        }

        Figures close() {
            found.sort((a, b) -> order(a.name(), a.rail(), b.name(), b.rail()));
            notFound.sort((a, b) -> order(a.name(), a.rail(), b.name(), b.rail()));
            return new Figures(found, notFound);
        }

        /** By figure only: the sort is stable, so rails keep their order. */
        private static int order(FigureName a, Optional<String> railA, FigureName b, Optional<String> railB) {
            return a.compareTo(b);
        }
    }
}
