package railwitness.analysis.transformer;

import java.util.List;
import java.util.OptionalDouble;

/** Usual ring cores, outer x inner diameter x height in mm (common sizes of the trade, from memory; measure yours). */
public final class RingSizes {
    private static final double[][] MILLIMETRES = {
        {25, 15, 10},
        {29, 19, 15},
        {36, 23, 15},
        {40, 24, 16},
        {42, 26, 13},
        {50, 30, 20},
        {58, 41, 18},
        {63, 38, 25},
        {74, 39, 13},
        {87, 54, 14},
        {102, 66, 15}
    };

    private RingSizes() {}

    /** All sizes in one material, smallest first. */
    public static List<Core> of(CoreMaterial material) {
        return java.util.Arrays.stream(MILLIMETRES)
                .map(mm -> new Core(
                        mm[0] * 1e-3,
                        mm[1] * 1e-3,
                        mm[2] * 1e-3,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        material))
                .toList();
    }

    /** Such as "50 x 30 x 20 mm". */
    public static String words(Core core) {
        return DesignWords.number(core.outerMetres() * 1e3) + " x " + DesignWords.number(core.innerMetres() * 1e3)
                + " x " + DesignWords.number(core.heightMetres() * 1e3) + " mm";
    }
}
