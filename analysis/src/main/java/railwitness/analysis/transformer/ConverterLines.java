package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What the transformer does to the parts around it, line by line. */
final class ConverterLines {
    static final String LEAKAGE = "energy of the leakage, each switching";
    private static final double SPIKE_SHARE = 0.8;

    private ConverterLines() {}

    static List<DesignLine> of(ToroidDesign design) {
        List<DesignLine> lines = new ArrayList<>();
        lines.add(ratio(design.primary().turns(), design.secondary().turns()));
        lines.add(stress(design.drive(), design.switchRatingVolts()));
        design.leakageHenries().ifPresent(henries -> {
            double amps = new Currents(design).input() / (2 * design.drive().duty());
            lines.add(DesignLine.of(
                    LEAKAGE, 0.5 * henries * amps * amps * 1e6, "uJ", "half L I^2 of one primary half", "definition"));
        });
        return lines;
    }

    static DesignLine ratio(int primaryTurns, int secondaryTurns) {
        return DesignLine.of(
                "turns ratio",
                (double) secondaryTurns / primaryTurns,
                "1",
                "secondary over primary turns",
                "definition");
    }

    static DesignLine stress(Drive drive, OptionalDouble ratingVolts) {
        DesignLine stress = DesignLine.of(
                        "switch voltage without spike",
                        2 * drive.highestVolts(),
                        "V",
                        "twice the highest input",
                        "push-pull: the other half adds its own voltage")
                .weak("the leakage's spike comes on top; measure it");
        return ratingVolts.isPresent()
                ? stress.atMost(
                        SPIKE_SHARE * ratingVolts.getAsDouble(),
                        "80 % of the rating, the rest for the spike: common practice, no source")
                : stress;
    }
}
