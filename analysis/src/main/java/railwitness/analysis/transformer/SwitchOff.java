package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.StraightLine;

/**
 * Resistance of a winding at the moment of switching off, from readings taken while it cools (method of IEC 60034-1,
 * 8.6.2.3: extrapolated back; the curve is taken as an exponential towards the cold resistance).
 */
public final class SwitchOff {
    private SwitchOff() {}

    /**
     * One reading after switching off.
     *
     * @param seconds since switching off, s, above 0
     * @param ohms as read
     */
    public record Reading(double seconds, Estimate ohms) {}

    /**
     * Extrapolates.
     *
     * @param coldOhms of the same winding at the ambient it cools towards
     * @param readings at least three, all above the cold resistance
     * @return ohm at switching off
     * @throws IllegalArgumentException for too few or readings not above the cold resistance
     */
    public static Estimate ohms(Estimate coldOhms, List<Reading> readings) {
        if (readings.size() < 3) {
            throw new IllegalArgumentException(
                    "hot resistance needs at least three readings after switching off, not " + readings.size());
        }
        List<StraightLine.Point> points = new ArrayList<>();
        for (Reading reading : readings) {
            Estimate above = reading.ohms().minus(coldOhms);
            if (!(above.value() > 3 * above.u())) {
                throw new IllegalArgumentException(
                        "a reading is not clearly above the cold resistance; measure sooner after switching off");
            }
            Estimate logarithm = Estimate.propagate(Math.log(above.value()), List.of(above), 1 / above.value());
            points.add(new StraightLine.Point(Estimate.exact(reading.seconds()), logarithm));
        }
        Estimate first = StraightLine.fit(points).intercept();
        double above = Math.exp(first.value());
        return Estimate.propagate(above, List.of(first), above).plus(coldOhms);
    }

    /**
     * Temperature of the winding then, degC.
     *
     * @param coldOhms at the known temperature
     * @param coldDegC of the winding when cold
     * @param hotOhms at switching off
     */
    public static Estimate degC(Estimate coldOhms, Estimate coldDegC, Estimate hotOhms) {
        double value = Copper.degCFromResistance(coldOhms.value(), coldDegC.value(), hotOhms.value());
        double offset = 1 / Copper.PER_KELVIN_20 - 20 + coldDegC.value();
        double ratio = hotOhms.value() / coldOhms.value();
        return Estimate.propagate(
                value,
                List.of(coldOhms, coldDegC, hotOhms),
                -ratio * offset / coldOhms.value(),
                ratio,
                offset / coldOhms.value());
    }
}
