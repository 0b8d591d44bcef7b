package railwitness.drivers.converter;

import java.util.List;

/**
 * Everything about the unit at one moment, as ideal meters would see it.
 *
 * @param running whether the switches are driven
 * @param terminalVolts mean voltage at the unit's own input terminals, V
 * @param inputAmps mean current into them, A
 * @param rails in the specimen's order
 * @param duty share of the cycle of one side; zero when it does not run
 * @param primaryRmsAmps rms current of the centre tap
 * @param limiting whether the source holds its current limit
 */
public record Balance(
        boolean running,
        double terminalVolts,
        double inputAmps,
        List<RailState> rails,
        Losses losses,
        double duty,
        double primaryRmsAmps,
        boolean limiting) {

    /**
     * One rail.
     *
     * @param volts mean voltage with its sign
     * @param amps mean current through the load, positive
     * @param ripple what is left of the switching
     */
    public record RailState(String name, double volts, double amps, Ripple ripple) {
        /** Power into the load, W. */
        public double watts() {
            return Math.abs(volts) * amps;
        }
    }

    public Balance {
        rails = List.copyOf(rails);
    }

    public double inputWatts() {
        return terminalVolts * inputAmps;
    }

    public double outputWatts() {
        return rails.stream().mapToDouble(RailState::watts).sum();
    }

    public RailState rail(String name) {
        return rails.stream()
                .filter(rail -> rail.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no rail '" + name + "'"));
    }
}
