package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Wire, resistance and room, line by line. */
final class WindingLines {
    private static final double HIGHEST_FILL = 0.35;
    private static final double HIGHEST_DENSITY = 6;
    private static final double WARM = 100;
    static final String FILL = "window fill";
    static final String DENSITY = "current density, ";

    private final ToroidDesign design;
    private final Heat heat;
    private final Windings windings;
    private final List<DesignLine> lines = new ArrayList<>();

    private WindingLines(ToroidDesign design, Heat heat) {
        this.design = design;
        this.heat = heat;
        this.windings = new Windings(design);
    }

    static List<DesignLine> of(ToroidDesign design, Heat heat) {
        WindingLines all = new WindingLines(design, heat);
        Currents currents = new Currents(design);
        all.lines.add(skin(design.drive()));
        all.winding("primary half", design.primary(), currents.primaryRms());
        all.winding("secondary half", design.secondary(), currents.secondaryRms());
        all.lines.add(all.fill());
        return all.lines;
    }

    static DesignLine skin(Drive drive) {
        return DesignLine.of(
                "skin depth at 100 degC",
                Copper.skinDepthMetres(drive.frequencyHz(), WARM) * 1e3,
                "mm",
                "sqrt(rho / (pi f mu0))",
                "IEC 60028");
    }

    private void winding(String name, Winding winding, double rms) {
        lines.add(DesignLine.of(
                        "wire length, " + name,
                        windings.metres(winding),
                        "m",
                        "turns x (once round the section, and what lies under it), 5 % more",
                        "geometry")
                .weak("hand winding differs by some 10 %"));
        lines.add(DesignLine.of(
                "resistance at 20 degC, " + name,
                1e3 * windings.ohms(winding, 20),
                "mohm",
                "length x 1.7241e-8 ohm m / copper",
                "IEC 60028"));
        lines.add(DesignLine.of(
                "resistance warm, " + name,
                1e3 * windings.ohms(winding, heat.degC()),
                "mohm",
                String.format(Locale.ROOT, "x (1 + 0.00393 (T - 20)) with T = %.0f degC", heat.degC()),
                "IEC 60028"));
        double skin = Copper.skinDepthMetres(design.drive().frequencyHz(), WARM);
        lines.add(DesignLine.of(
                        "strand over twice the skin depth, " + name,
                        winding.wire().diameterMetres() / (2 * skin),
                        "1",
                        "strand diameter / (2 x skin depth)",
                        "definition")
                .atMost(1, "thicker strands carry no more: common practice, no source"));
        lines.add(DesignLine.of(
                        "alternating over direct resistance, " + name,
                        windings.alternatingFactor(winding, heat.degC()),
                        "1",
                        "Dowell, summed over harmonics",
                        "P. L. Dowell, Proc. IEE 113 (1966)")
                .weak("round wire on a toroid taken as layers of foil: some 20 %"));
        lines.add(DesignLine.of(
                        DENSITY + name,
                        rms / winding.wire().areaSquareMetres() * 1e-6,
                        "A/mm^2",
                        "root mean square current over copper",
                        "definition")
                .atMost(HIGHEST_DENSITY, "common practice, no source"));
    }

    private DesignLine fill() {
        return DesignLine.of(FILL, 100 * windings.fill(), "%", "wire with enamel, squared, over the hole", "definition")
                .atMost(100 * HIGHEST_FILL, "a shuttle needs the rest of the hole: common practice, no source");
    }
}
