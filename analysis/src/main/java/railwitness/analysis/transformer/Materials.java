package railwitness.analysis.transformer;

import java.util.List;
import java.util.Optional;

/** A few materials of cores by kind; a sheet may give its own numbers instead. */
public final class Materials {
    private static final List<CoreMaterial> ALL = List.of(
            new CoreMaterial(
                    "low-loss power ferrite",
                    42.36588301,
                    1.16,
                    2.8,
                    1.465,
                    0.01100719,
                    6.35519e-5,
                    0.49,
                    0.39,
                    3000,
                    "published fit of a manganese-zinc power ferrite, 20 to 150 kHz; saturation from memory"),
            new CoreMaterial(
                    "power ferrite",
                    111.1,
                    1.16,
                    2.8,
                    1.465,
                    0.01100719,
                    6.35519e-5,
                    0.48,
                    0.37,
                    2000,
                    "shape as the low-loss kind, height by 155 mW/cm^3 at 25 kHz, 0.2 T, 100 degC as quoted for an older"
                            + " grade; saturation from memory"),
            new CoreMaterial(
                    "iron powder 75",
                    408,
                    1.2,
                    1.98,
                    1,
                    0,
                    0,
                    1.0,
                    0.95,
                    75,
                    "from memory, 25 to 50 kHz, 0.05 to 0.1 T; meant for chokes"));

    private Materials() {}

    /** All of them. */
    public static List<CoreMaterial> all() {
        return ALL;
    }

    /** The one of that name. */
    public static Optional<CoreMaterial> named(String name) {
        return ALL.stream().filter(one -> one.name().equals(name)).findFirst();
    }
}
