package railwitness.analysis.transformer;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import railwitness.analysis.design.FluxDensity;

/** What the core sees, line by line. */
final class CoreLines {
    private static final double COLD = 25;
    private static final double WARM = 100;
    private static final String FARADAY = "Faraday's law for a square wave";

    private CoreLines() {}

    static List<DesignLine> of(ToroidDesign design) {
        CoreMaterial material = design.core().material();
        return List.of(
                voltSeconds(design.drive()),
                flux(
                        design.drive(),
                        design.primary().turns(),
                        design.core().area(),
                        design.highestFluxTesla(),
                        material),
                first(design, material),
                DesignLine.of(
                                "magnetising inductance of a primary half",
                                Flux.inductance(design) * 1e6,
                                "uH",
                                "turns squared x inductance of one turn",
                                "definition")
                        .weak("the core's inductance factor spreads by 25 %"),
                DesignLine.of(
                                "magnetising current, peak",
                                Flux.current(design, design.drive().nominalVolts()),
                                "A",
                                "nominal input x duty / (2 x frequency x inductance)",
                                "definition")
                        .weak("as the inductance"),
                DesignLine.of(
                                "magnetising current without load, peak",
                                Flux.idleCurrent(design, design.drive().nominalVolts()),
                                "A",
                                "nominal input / (4 x frequency x inductance): it swings on in the pauses",
                                "definition")
                        .weak("as the inductance; it goes back and forth, so the supply gives next to none of it"));
    }

    static DesignLine voltSeconds(Drive drive) {
        return DesignLine.of(
                "volt-seconds of a half-cycle",
                drive.highestVolts() * drive.duty() / drive.frequencyHz() * 1e6,
                "V us",
                "highest input x duty / frequency",
                FARADAY);
    }

    /** @param highestTesla of the sheet; without it the material's saturation when hot is the limit */
    static DesignLine flux(
            Drive drive, int turns, double squareMetres, OptionalDouble highestTesla, CoreMaterial material) {
        DesignLine line = DesignLine.of(
                "flux density",
                FluxDensity.peakTesla(drive.highestVolts(), drive.duty(), drive.frequencyHz(), turns, squareMetres),
                "T",
                "highest input x duty / (2 x frequency x turns x core area)",
                FARADAY);
        double saturation = material.saturationTesla(WARM);
        return highestTesla.isPresent() && highestTesla.getAsDouble() < saturation
                ? line.atMost(highestTesla.getAsDouble(), "limit of the sheet")
                : line.atMost(saturation, "saturation at 100 degC of " + material.name());
    }

    private static DesignLine first(ToroidDesign design, CoreMaterial material) {
        Drive drive = design.drive();
        DesignLine line = DesignLine.of(
                        "flux density of the first half-cycle",
                        Flux.first(design, drive.highestVolts()),
                        "T",
                        drive.softStart() ? "as later, the duty grows slowly" : "twice the flux density later",
                        FARADAY + ", from rest")
                .atMost(material.saturationTesla(COLD), "saturation at 25 degC of " + material.name());
        return drive.softStart()
                ? line
                : line.weak(String.format(
                        Locale.ROOT, "a restart while hot bears only %.3g T", material.saturationTesla(WARM)));
    }
}
