package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a design comes to, number by number, each with its formula.
 *
 * @param design it was worked out from
 * @param lines in the order of the work: core, windings, losses, converter
 */
public record DesignSheet(ToroidDesign design, List<DesignLine> lines) {
    private static final double HIGHEST_FILL = 0.35;
    private static final double HIGHEST_DENSITY = 6;
    private static final double SPIKE_SHARE = 0.8;
    private static final double WARM = 100;

    public DesignSheet {
        lines = List.copyOf(lines);
    }

    /** Works it out. */
    public static DesignSheet of(ToroidDesign design) {
        List<DesignLine> lines = new ArrayList<>();
        Heat heat = Heat.of(design);
        core(design, lines);
        windings(design, heat, lines);
        heat(design, heat, lines);
        converter(design, lines);
        return new DesignSheet(design, lines);
    }

    /** The line that uses most of what it may; empty where none has a limit. */
    public Optional<DesignLine> limiting() {
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

    private static void core(ToroidDesign design, List<DesignLine> lines) {
        Drive drive = design.drive();
        CoreMaterial material = design.core().material();
        String faraday = "Faraday's law for a square wave";
        lines.add(DesignLine.of(
                "volt-seconds of a half-cycle",
                drive.highestVolts() * drive.duty() / drive.frequencyHz() * 1e6,
                "V us",
                "highest input x duty / frequency",
                faraday));
        lines.add(DesignLine.of(
                        "flux density",
                        Flux.peak(design, drive.highestVolts()),
                        "T",
                        "highest input x duty / (2 x frequency x turns x core area)",
                        faraday)
                .atMost(material.saturationTesla(WARM), "saturation at 100 degC of " + material.name()));
        lines.add(DesignLine.of(
                        "flux density of the first half-cycle",
                        Flux.first(design, drive.highestVolts()),
                        "T",
                        drive.softStart() ? "as later, the duty grows slowly" : "twice the flux density later",
                        faraday + ", from rest")
                .atMost(material.saturationTesla(25), "saturation at 25 degC of " + material.name()));
        lines.add(DesignLine.of(
                        "magnetising inductance of a primary half",
                        Flux.inductance(design) * 1e6,
                        "uH",
                        "turns squared x inductance of one turn",
                        "definition")
                .weak("the core's inductance factor spreads by 25 %"));
        lines.add(DesignLine.of(
                        "magnetising current, peak",
                        Flux.current(design, drive.nominalVolts()),
                        "A",
                        "nominal input x duty / (2 x frequency x inductance)",
                        "definition")
                .weak("as the inductance"));
    }

    private static void windings(ToroidDesign design, Heat heat, List<DesignLine> lines) {
        Windings windings = new Windings(design);
        Currents currents = new Currents(design);
        double skin = Copper.skinDepthMetres(design.drive().frequencyHz(), WARM);
        lines.add(DesignLine.of(
                "skin depth at 100 degC", skin * 1e3, "mm", "sqrt(rho / (pi f mu0))", "IEC 60028 copper"));
        winding("primary", design.primary(), currents.primaryRms(), windings, heat, skin, lines);
        winding("secondary", design.secondary(), currents.secondaryRms(), windings, heat, skin, lines);
        lines.add(DesignLine.of(
                        "window fill",
                        100 * windings.fill(),
                        "%",
                        "wire with enamel, squared, over the hole",
                        "definition")
                .atMost(100 * HIGHEST_FILL, "a shuttle needs the rest of the hole: common practice, no source"));
    }

    private static void winding(
            String name,
            Winding winding,
            double rms,
            Windings windings,
            Heat heat,
            double skin,
            List<DesignLine> lines) {
        String each = ", " + name + " half";
        lines.add(DesignLine.of(
                        "wire length" + each,
                        windings.metres(winding),
                        "m",
                        "turns x (once round the section, and what lies under it), 5 % more",
                        "geometry")
                .weak("hand winding differs by some 10 %"));
        lines.add(DesignLine.of(
                "resistance at 20 degC" + each,
                1e3 * windings.ohms(winding, 20),
                "mohm",
                "length x 1.7241e-8 ohm m / copper",
                "IEC 60028"));
        lines.add(DesignLine.of(
                String.format(Locale.ROOT, "resistance at %.0f degC%s", heat.degC(), each),
                1e3 * windings.ohms(winding, heat.degC()),
                "mohm",
                "x (1 + 0.00393 (T - 20))",
                "IEC 60028"));
        lines.add(DesignLine.of(
                        "strand over twice the skin depth" + each,
                        winding.wire().diameterMetres() / (2 * skin),
                        "1",
                        "strand diameter / (2 x skin depth)",
                        "definition")
                .atMost(1, "thicker strands carry no more: common practice, no source"));
        lines.add(DesignLine.of(
                        "alternating over direct resistance" + each,
                        windings.alternatingFactor(winding, heat.degC()),
                        "1",
                        "Dowell, summed over harmonics",
                        "P. L. Dowell, Proc. IEE 113 (1966)")
                .weak("round wire on a toroid taken as layers of foil: some 20 %"));
        lines.add(DesignLine.of(
                        "current density" + each,
                        rms / winding.wire().areaSquareMetres() * 1e-6,
                        "A/mm^2",
                        "root mean square current over copper",
                        "definition")
                .atMost(HIGHEST_DENSITY, "common practice, no source"));
    }

    private static void heat(ToroidDesign design, Heat heat, List<DesignLine> lines) {
        lines.add(DesignLine.of(
                "copper loss, primary", heat.primaryWatts(), "W", "both halves, I^2 R, warm", "definition"));
        lines.add(DesignLine.of(
                "copper loss, secondary", heat.secondaryWatts(), "W", "both halves, I^2 R, warm", "definition"));
        lines.add(DesignLine.of(
                        "core loss",
                        heat.coreWatts(),
                        "W",
                        "Steinmetz, square drive with rests",
                        "K. Venkatachalam and others, IEEE COMPEL 2002; "
                                + design.core().material().source())
                .weak("data sheets and cores differ by 20 to 50 %"));
        lines.add(DesignLine.of(
                        "winding temperature",
                        heat.degC(),
                        "degC",
                        "ambient + (mW / cm^2)^0.833",
                        "rule of handbooks, from memory")
                .atMost(design.highestDegC(), "insulation class (IEC 60085)")
                .weak("still air, no neighbours: some 30 % of the rise"));
    }

    private static void converter(ToroidDesign design, List<DesignLine> lines) {
        double twice = 2 * design.drive().highestVolts();
        lines.add(DesignLine.of("turns ratio", design.ratio(), "1", "secondary over primary turns", "definition"));
        DesignLine stress = DesignLine.of(
                        "switch voltage without spike",
                        twice,
                        "V",
                        "twice the highest input",
                        "push-pull: the other half adds its own voltage")
                .weak("the leakage's spike comes on top; measure it");
        lines.add(
                design.switchRatingVolts().isPresent()
                        ? stress.atMost(
                                SPIKE_SHARE * design.switchRatingVolts().getAsDouble(),
                                "80 % of the rating, the rest for the spike: common practice, no source")
                        : stress);
        design.leakageHenries().ifPresent(henries -> {
            double amps = new Currents(design).input() / (2 * design.drive().duty());
            lines.add(DesignLine.of(
                    "energy of the leakage, each switching",
                    0.5 * henries * amps * amps * 1e6,
                    "uJ",
                    "half L I^2 of one primary half",
                    "definition"));
        });
    }
}
