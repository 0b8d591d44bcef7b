package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * One rail: a table {@code [[rail]]}.
 *
 * @param name lower-case letters, digits and hyphens; it names the rail's readings
 * @param nominalVolts with its sign, V; not 0
 * @param fullLoadAmperes rated load, A, above 0
 */
public record Rail(String name, double nominalVolts, OptionalDouble fullLoadAmperes) {
    public Rail {
        if (!name.matches("[a-z][a-z0-9-]*")) {
            throw new IllegalArgumentException("rail name '" + name + "' must be lower-case letters, digits, hyphens");
        }
        Allowed.require(Double.isFinite(nominalVolts) && nominalVolts != 0, "nominal_V", nominalVolts, "must not be 0");
        Allowed.positive("full_load_A", fullLoadAmperes);
    }
}
