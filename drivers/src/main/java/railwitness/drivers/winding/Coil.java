package railwitness.drivers.winding;

import java.util.EnumMap;
import java.util.Map;

/**
 * A wound transformer as it truly is. Its network is the textbooks' equivalent circuit seen from primary A: leakage and
 * resistance in series, then inductance and core loss side by side, closed turns in parallel by the square of the turns.
 *
 * @param turns by winding
 * @param ohms20 resistance by winding at 20 degC, ohm
 * @param primaryTurned whether primary B is joined the wrong way round
 * @param secondaryTurned whether secondary B is
 * @param henriesPerTurn inductance of one turn on the core, H
 * @param coreOhmPerTurn what the core loss amounts to beside one turn, ohm
 * @param primaryLeakHenry of primary A, H
 * @param secondaryLeakHenry of a secondary half, H
 * @param closedTurnOhm resistance of a turn that is closed; infinite where none is
 */
public record Coil(
        Map<Half, Double> turns,
        Map<Half, Double> ohms20,
        boolean primaryTurned,
        boolean secondaryTurned,
        double henriesPerTurn,
        double coreOhmPerTurn,
        double primaryLeakHenry,
        double secondaryLeakHenry,
        double closedTurnOhm) {
    /** Temperature coefficient of copper at 20 degC, 1/K (IEC 60028). */
    private static final double COPPER = 0.00393;

    public Coil {
        turns = Map.copyOf(turns);
        ohms20 = Map.copyOf(ohms20);
        if (turns.size() != Half.values().length || ohms20.size() != Half.values().length) {
            throw new IllegalArgumentException("a transformer has four windings, each with turns and resistance");
        }
    }

    /** Both halves of each pair alike, nothing wrong. */
    public static Coil sound(
            double primaryTurns,
            double secondaryTurns,
            double primaryOhms,
            double secondaryOhms,
            double henries,
            double coreOhm,
            double leakHenry) {
        Map<Half, Double> turns = new EnumMap<>(Half.class);
        Map<Half, Double> ohms = new EnumMap<>(Half.class);
        for (Half half : Half.values()) {
            boolean primary = half == Half.PRIMARY_A || half == Half.PRIMARY_B;
            turns.put(half, primary ? primaryTurns : secondaryTurns);
            ohms.put(half, primary ? primaryOhms : secondaryOhms);
        }
        double square = primaryTurns * primaryTurns;
        double ratio = secondaryTurns / primaryTurns;
        return new Coil(
                turns,
                ohms,
                false,
                false,
                henries / square,
                coreOhm / square,
                leakHenry / 2,
                leakHenry * ratio * ratio,
                Double.POSITIVE_INFINITY);
    }

    /** Resistance of a winding at a temperature, ohm. */
    public double ohm(Half half, double degC) {
        return ohms20.get(half) * (1 + COPPER * (degC - 20));
    }

    private double sign(Half half) {
        boolean turned = half == Half.PRIMARY_B && primaryTurned || half == Half.SECONDARY_B && secondaryTurned;
        return turned ? -1 : 1;
    }

    /**
     * What an ideal meter reads, root mean square, V.
     *
     * @param drive of primary A
     * @param degC of the windings
     */
    public double volts(Hookup hookup, Drive drive, double degC) {
        boolean shorted = hookup.kind() == Hookup.Kind.SHORTED_WINDING || hookup.kind() == Hookup.Kind.SHORTED_RESISTOR;
        Complex inner = inner(drive.hertz(), shorted, degC);
        Complex winding =
                series(Half.PRIMARY_A, primaryLeakHenry, drive.hertz(), degC).plus(inner);
        Complex amps = Complex.real(drive.volts()).over(winding.plus(Complex.real(drive.ohms())));
        Complex across = amps.times(winding);
        Complex perTurn = amps.times(inner).times(1 / turns.get(Half.PRIMARY_A));
        return switch (hookup.kind()) {
            case VOLTS ->
                hookup.half().orElseThrow() == Half.PRIMARY_A
                        ? across.abs()
                        : perTurn.abs() * turns.get(hookup.half().orElseThrow());
            case PRIMARIES ->
                across.plus(perTurn.times(sign(Half.PRIMARY_B) * turns.get(Half.PRIMARY_B)))
                        .abs();
            case SECONDARIES ->
                perTurn.abs()
                        * Math.abs(turns.get(Half.SECONDARY_A) + sign(Half.SECONDARY_B) * turns.get(Half.SECONDARY_B));
            case ONE_TURN -> perTurn.abs();
            case RESISTOR, SHORTED_RESISTOR -> amps.abs() * drive.ohms();
            case SHORTED_WINDING -> across.abs();
            case BOTH -> drive.volts();
            default -> 0;
        };
    }

    /** Frequency at which primary A rings with that capacitor, Hz. */
    public double ringingHertz(double farads) {
        double turnsA = turns.get(Half.PRIMARY_A);
        double henries = henriesPerTurn * turnsA * turnsA;
        if (Double.isFinite(closedTurnOhm)) {
            henries = primaryLeakHenry * 2;
        }
        return 1 / (2 * Math.PI * Math.sqrt(henries * farads));
    }

    private Complex series(Half half, double leakHenry, double hertz, double degC) {
        return new Complex(ohm(half, degC), 2 * Math.PI * hertz * leakHenry);
    }

    /** All that lies side by side, seen from primary A. */
    private Complex inner(double hertz, boolean shorted, double degC) {
        double turnsA = turns.get(Half.PRIMARY_A);
        double square = turnsA * turnsA;
        Complex admittance = new Complex(0, 2 * Math.PI * hertz * henriesPerTurn * square)
                .inverse()
                .plus(Complex.real(1 / (coreOhmPerTurn * square)));
        if (Double.isFinite(closedTurnOhm)) {
            admittance = admittance.plus(Complex.real(1 / (closedTurnOhm * square)));
        }
        if (shorted) {
            for (Half half : new Half[] {Half.SECONDARY_A, Half.SECONDARY_B}) {
                double ratio = turnsA / turns.get(half);
                admittance = admittance.plus(series(half, secondaryLeakHenry, hertz, degC)
                        .times(ratio * ratio)
                        .inverse());
            }
        }
        return admittance.inverse();
    }

    /**
     * What drives primary A: a generator with an amplifier behind it.
     *
     * @param volts without load, root mean square, V
     * @param hertz Hz
     * @param ohms of the resistor in series, ohm
     */
    public record Drive(double volts, double hertz, double ohms) {}
}
