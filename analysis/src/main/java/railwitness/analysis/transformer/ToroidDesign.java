package railwitness.analysis.transformer;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A transformer as it is meant to be wound, before anything is measured.
 *
 * @param core it is wound on
 * @param primary both halves alike
 * @param secondary both halves alike
 * @param drive of the primary
 * @param rails fed by the secondary
 * @param ambientDegC around it
 * @param highestDegC the winding may reach, from its insulation class (class A 105, class B 130 degC: IEC 60085)
 * @param switchRatingVolts of the switches
 * @param leakageHenries one primary half with the secondary shorted, where known, H
 * @param highestFluxTesla flux density the core may reach by the sheet, where it says so, T
 */
public record ToroidDesign(
        Core core,
        Winding primary,
        Winding secondary,
        Drive drive,
        List<RailLoad> rails,
        double ambientDegC,
        double highestDegC,
        OptionalDouble switchRatingVolts,
        OptionalDouble leakageHenries,
        OptionalDouble highestFluxTesla) {
    public ToroidDesign {
        rails = List.copyOf(rails);
        if (!(highestDegC > ambientDegC)) {
            throw new IllegalArgumentException(
                    "highest temperature " + highestDegC + " degC must be above the ambient " + ambientDegC + " degC");
        }
    }

    /** Secondary turns over primary turns. */
    public double ratio() {
        return (double) secondary.turns() / primary.turns();
    }

    /** Full load of all rails together, W. */
    public double outputWatts() {
        return rails.stream().mapToDouble(RailLoad::watts).sum();
    }
}
