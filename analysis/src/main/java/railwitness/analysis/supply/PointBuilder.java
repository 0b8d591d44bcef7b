package railwitness.analysis.supply;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.uncertainty.Estimate;

/** Gathers one operating point channel by channel. A rail whose load current is not given carries none. */
public final class PointBuilder {
    private final String stage;
    private final String step;
    private int count = 1;
    private double fromSeconds;
    private double toSeconds;
    private boolean settled = true;
    private Optional<Estimate> inputVoltage = Optional.empty();
    private Optional<Estimate> inputCurrent = Optional.empty();
    private InputSource inputSource = InputSource.TERMINALS;
    private OptionalDouble setVolts = OptionalDouble.empty();
    private final Map<String, Estimate> voltages = new LinkedHashMap<>();
    private final Map<String, Estimate> currents = new LinkedHashMap<>();
    private final Map<String, Estimate> ripples = new LinkedHashMap<>();
    private final Map<String, Estimate> temperatures = new LinkedHashMap<>();

    PointBuilder(String stage, String step) {
        this.stage = stage;
        this.step = step;
    }

    /** Readings averaged on the scarcest channel, 1 or more. */
    public PointBuilder count(int readings) {
        count = readings;
        return this;
    }

    /** When the average began and ended, s of the session. */
    public PointBuilder during(double from, double to) {
        fromSeconds = from;
        toSeconds = to;
        return this;
    }

    /** Whether the readings had stopped drifting. */
    public PointBuilder settled(boolean yes) {
        settled = yes;
        return this;
    }

    /** Input voltage, V, and where it was measured. */
    public PointBuilder inputVoltage(Estimate volts, InputSource source) {
        inputVoltage = Optional.of(volts);
        inputSource = source;
        return this;
    }

    /** Input voltage at the unit's terminals, V. */
    public PointBuilder inputVoltage(Estimate volts) {
        return inputVoltage(volts, InputSource.TERMINALS);
    }

    /** Input current, A. */
    public PointBuilder inputCurrent(Estimate amperes) {
        inputCurrent = Optional.of(amperes);
        return this;
    }

    /** What the supply was set to, V. */
    public PointBuilder setVolts(double volts) {
        setVolts = OptionalDouble.of(volts);
        return this;
    }

    /** A rail's voltage with its sign, V. */
    public PointBuilder railVoltage(String rail, Estimate volts) {
        voltages.put(rail, volts);
        return this;
    }

    /** A rail's load current, A; its sign is dropped. */
    public PointBuilder railCurrent(String rail, Estimate amperes) {
        currents.put(rail, amperes.abs());
        return this;
    }

    /** A rail's ripple, V rms. */
    public PointBuilder ripple(String rail, Estimate voltsRms) {
        ripples.put(rail, voltsRms);
        return this;
    }

    /** A temperature, degC. */
    public PointBuilder temperature(String node, Estimate degC) {
        temperatures.put(node, degC);
        return this;
    }

    /**
     * The point.
     *
     * @throws IllegalArgumentException naming the channel that is missing
     */
    public OperatingPoint build() {
        Map<String, RailPoint> rails = new LinkedHashMap<>();
        voltages.forEach((rail, volts) -> rails.put(
                rail,
                RailPoint.of(
                        volts,
                        currents.getOrDefault(rail, Estimate.exact(0)),
                        Optional.ofNullable(ripples.get(rail)))));
        InputPoint input =
                InputPoint.of(required("input.voltage", inputVoltage), required("input.current", inputCurrent));
        return new OperatingPoint(
                stage, step, count, fromSeconds, toSeconds, settled, input, inputSource, setVolts, rails, temperatures);
    }

    private Estimate required(String channel, Optional<Estimate> value) {
        return value.orElseThrow(() -> new IllegalArgumentException(
                "point '" + stage + " " + step + "' has no " + channel + ": it cannot be worked out without"));
    }
}
