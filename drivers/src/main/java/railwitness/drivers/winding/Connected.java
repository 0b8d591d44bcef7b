package railwitness.drivers.winding;

import railwitness.drivers.converter.Apart;

/**
 * A transformer connected for one reading.
 *
 * @param coil as it is
 * @param hookup how it is connected
 * @param node the meter's place
 * @param drive of primary A for what alternates
 * @param ringFarads the capacitor of the ringing, F
 * @param thermalVolts what unlike metals add to a direct voltage, V
 */
public record Connected(Coil coil, Hookup hookup, String node, Coil.Drive drive, double ringFarads, double thermalVolts)
        implements Apart {
    @Override
    public double ohm(double degC) {
        return hookup.direct() ? coil.ohm(hookup.half().orElseThrow(), degC) : Double.POSITIVE_INFINITY;
    }

    @Override
    public double directVolts(double amps, double degC) {
        if (!hookup.direct()) {
            return 0;
        }
        double sign = hookup.kind() == Hookup.Kind.OTHER_WAY ? -1 : 1;
        return sign * amps * ohm(degC) + thermalVolts;
    }

    @Override
    public double alternatingVolts(double degC) {
        return hookup.direct() ? 0 : coil.volts(hookup, drive, degC);
    }

    /** What a scope shows of the ringing, Hz. */
    public double ringingHertz() {
        return coil.ringingHertz(ringFarads);
    }
}
