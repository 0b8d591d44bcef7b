package railwitness.analysis.design;

import java.util.OptionalDouble;

/**
 * The transformer: table {@code [transformer]}. Turns are of one half; resistances are cold.
 *
 * @param primaryTurns per half, 1 or more
 * @param secondaryTurns per half, 1 or more
 * @param primaryResistanceOhms one half, ohm
 * @param secondaryResistanceOhms one half, ohm
 * @param coreAreaSquareMillimetres effective area of the core, mm^2
 * @param highestFluxTesla flux density it may reach, T
 * @param inductancePerTurnSquaredNanohenries nH
 * @param coreLossWatts at nominal input, W
 * @param leakageNanohenries leakage in series with a rail, seen at the secondary, nH
 */
public record Transformer(
        int primaryTurns,
        int secondaryTurns,
        OptionalDouble primaryResistanceOhms,
        OptionalDouble secondaryResistanceOhms,
        OptionalDouble coreAreaSquareMillimetres,
        OptionalDouble highestFluxTesla,
        OptionalDouble inductancePerTurnSquaredNanohenries,
        OptionalDouble coreLossWatts,
        OptionalDouble leakageNanohenries) {
    public Transformer {
        Allowed.count("primary_turns", primaryTurns, 1);
        Allowed.count("secondary_turns", secondaryTurns, 1);
        Allowed.notNegative("primary_resistance_ohm", primaryResistanceOhms);
        Allowed.notNegative("secondary_resistance_ohm", secondaryResistanceOhms);
        Allowed.positive("core_area_mm2", coreAreaSquareMillimetres);
        Allowed.positive("highest_flux_T", highestFluxTesla);
        Allowed.positive("inductance_per_turn_squared_nH", inductancePerTurnSquaredNanohenries);
        Allowed.notNegative("core_loss_W", coreLossWatts);
        Allowed.notNegative("leakage_nH", leakageNanohenries);
    }

    /** A transformer of which only the turns per half are known. */
    public static Transformer of(int primaryTurns, int secondaryTurns) {
        OptionalDouble unknown = OptionalDouble.empty();
        return new Transformer(
                primaryTurns, secondaryTurns, unknown, unknown, unknown, unknown, unknown, unknown, unknown);
    }

    /** Secondary turns over primary turns, per half. */
    public double ratio() {
        return (double) secondaryTurns / primaryTurns;
    }
}
