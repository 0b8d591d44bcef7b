package railwitness.analysis.transformer;

/** Lengths, layers and resistances of the two windings of a toroid, the secondary wound first, the primary over it. */
final class Windings {
    private static final double SLACK = 1.05;

    private final ToroidDesign design;

    Windings(ToroidDesign design) {
        this.design = design;
    }

    /** Share of the core's hole that wire with its enamel takes, 0 and up. */
    double fill() {
        double taken =
                design.primary().windowSquareMetres() + design.secondary().windowSquareMetres();
        return taken / design.core().windowSquareMetres();
    }

    /** Strands over one another at the hole, where they crowd; not whole. */
    double layers(Winding winding) {
        double outer = winding.wire().outerMetres();
        double perLayer = Math.PI * Math.max(outer, design.core().innerMetres() - outer) / outer;
        return 2.0 * winding.turns() * winding.wire().strands() / perLayer;
    }

    /** Wire of one half, m, as its layers lie: each turn is longer by what lies under it; 5 % for laying. */
    double metres(Winding winding) {
        double below = winding == design.primary() ? thickness(design.secondary()) : 0;
        double middle = below + thickness(winding) / 2;
        return winding.turns() * (design.core().turnMetres() + 8 * middle) * SLACK;
    }

    private double thickness(Winding winding) {
        return Math.max(1, layers(winding)) * winding.wire().outerMetres();
    }

    /** Direct-current resistance of one half, ohm. */
    double ohms(Winding winding, double degC) {
        return metres(winding) * winding.wire().ohmsPerMetre(degC);
    }

    /** Resistance to its own current over direct-current resistance; see {@link Dowell}. */
    double alternatingFactor(Winding winding, double degC) {
        Drive drive = design.drive();
        double porosity = Math.min(1, Math.min(1, layers(winding)) * Math.sqrt(Math.PI) / 2 / 1.08);
        return Dowell.blockFactor(
                winding.wire().diameterMetres(), layers(winding), porosity, drive.duty(), drive.frequencyHz(), degC);
    }
}
