package railwitness.drivers.converter;

import java.util.List;
import java.util.Optional;

/**
 * The unit under test in time: its capacitors by implicit steps that are short after a disturbance and grow, its two
 * bodies by the exact answer of a first-order body to the power of the step, and the control that starts and stops it.
 */
final class LiveUnit {
    private static final double SHORT_STEP_SECONDS = 2e-4;
    private static final double LONG_STEP_SECONDS = 5;
    private static final double LARGEST_CHANGE_VOLTS = 0.8;
    private static final double STEADY_VOLTS_PER_SECOND = 0.002;
    private static final double WORN_EVERY_SECONDS = 30;
    private static final double NOTICED_KELVIN = 0.02;
    private static final double NOTICED_VOLTS = 1e-6;

    private final Specimen specimen;
    private final Surroundings surroundings;
    private final ConverterModel converter;
    private final Body transformer;
    private final Body heatsink;
    private final Hiccups hiccups = new Hiccups();
    private Circuit circuit;
    private double circuitTransformerDegC;
    private double circuitHeatsinkDegC;
    private Charge charge;
    private Balance balance;
    private boolean running;
    private double runningSeconds;
    private double restSeconds;
    private double lived;
    private double wornAtSeconds;
    private double rampTopVolts;
    private double nextStep = SHORT_STEP_SECONDS;
    private boolean steady;
    /** Whether the balance still holds as long as nothing changes. */
    private boolean balanced;

    LiveUnit(Specimen specimen, double ambientDegC) {
        this(specimen, Surroundings.still(ambientDegC));
    }

    LiveUnit(Specimen specimen, Surroundings surroundings) {
        this.specimen = specimen;
        this.surroundings = surroundings;
        double ambientDegC = surroundings.room().degC(0);
        converter = new ConverterModel(specimen);
        Specimen.Thermal thermal = specimen.thermal();
        transformer = new Body(thermal.transformerJoulePerKelvin(), thermal.transformerKelvinPerWatt(), ambientDegC);
        heatsink = new Body(thermal.heatsinkJoulePerKelvin(), thermal.heatsinkKelvinPerWatt(), ambientDegC);
        charge = Charge.empty(specimen.rails().size());
        refresh();
        Feed nothing = new Feed(false, 0, 1);
        List<Draw> unloaded = specimen.rails().stream().map(rail -> Draw.NONE).toList();
        balance = converter.balance(circuit, new Situation(nothing, unloaded, false, 0), charge);
    }

    /** Something changed: the next steps are short. */
    void disturb() {
        hiccups.forget();
        shorten();
    }

    private void shorten() {
        nextStep = SHORT_STEP_SECONDS;
        steady = false;
        balanced = false;
    }

    /** Works one step of at most so long out; returns its length, s. */
    double step(Feed feed, List<Draw> draws, boolean remote, double atMostSeconds) {
        control(remote, feed);
        Optional<Hiccups.Leap> leap = hiccups.leap(atMostSeconds);
        if (leap.isPresent()) {
            charge = leap.get().charge();
            warm(
                    leap.get().transformerWatts(),
                    leap.get().heatsinkWatts(),
                    leap.get().seconds());
            return leap.get().seconds();
        }
        double step = Math.min(Math.min(nextStep, atMostSeconds), Math.min(rampLeft(), restLeft()));
        Charge next = converter.step(circuit, situation(feed, draws, step), charge, step);
        double change = next.distance(charge);
        while (change > LARGEST_CHANGE_VOLTS && step > SHORT_STEP_SECONDS) {
            step = Math.max(SHORT_STEP_SECONDS, step / 3);
            next = converter.step(circuit, situation(feed, draws, step), charge, step);
            change = next.distance(charge);
        }
        settle(step, change);
        charge = next;
        runningSeconds += running ? step : 0;
        restSeconds -= step;
        if (!balanced || change > NOTICED_VOLTS) {
            balance = converter.balance(circuit, situation(feed, draws, 0), charge);
            balanced = steady && change <= NOTICED_VOLTS;
        }
        hiccups.passed(step, balance.losses());
        warm(balance.losses().transformer(), balance.losses().heatsink(), step);
        return step;
    }

    private void settle(double step, double change) {
        boolean wasWhole = step >= nextStep;
        if (change > LARGEST_CHANGE_VOLTS / 2 || step < nextStep && change > LARGEST_CHANGE_VOLTS / 3) {
            nextStep = step;
        } else if (wasWhole) {
            nextStep = Math.min(LONG_STEP_SECONDS, step * 2);
        }
        steady = change / step < STEADY_VOLTS_PER_SECOND && nextStep > 0.05 && rampLeft() > LONG_STEP_SECONDS;
    }

    private void control(boolean remote, Feed feed) {
        double volts = charge.terminalVolts();
        double needed =
                running ? specimen.drive().dropOutVolts() : specimen.drive().startVolts();
        if (running
                && rampLeft() == Double.POSITIVE_INFINITY
                && specimen.flaws().stops(balance.inputAmps())) {
            restSeconds = Flaws.REST_SECONDS;
        }
        boolean run = remote && volts >= needed && restSeconds <= 0;
        if (run != running) {
            running = run;
            runningSeconds = 0;
            rampTopVolts = circuit.highestRatio()
                    * Math.max(volts, feed.volts())
                    * (1 + specimen.transformer().peakCharging());
            charge = charge.withDuty(0);
            shorten();
            if (run) {
                hiccups.started(charge);
            }
        }
    }

    /** What is left of a rest after the unit's own protection stopped it, s; endless when there is none. */
    private double restLeft() {
        return restSeconds > 0 ? Math.max(restSeconds, SHORT_STEP_SECONDS) : Double.POSITIVE_INFINITY;
    }

    /** What is left of the soft start, s; endless when it is over. */
    private double rampLeft() {
        double left = specimen.drive().softStartSeconds() - runningSeconds;
        return running && left > 1e-9 ? Math.max(left, SHORT_STEP_SECONDS) : Double.POSITIVE_INFINITY;
    }

    private Situation situation(Feed feed, List<Draw> draws, double step) {
        double ceiling = specimen.drive().regulatedVolts().orElse(Double.POSITIVE_INFINITY);
        if (rampLeft() < Double.POSITIVE_INFINITY) {
            double share = (runningSeconds + step) / specimen.drive().softStartSeconds();
            ceiling = Math.min(ceiling, rampTopVolts * share);
        }
        return new Situation(feed, draws, running, ceiling);
    }

    private void warm(double transformerWatts, double heatsinkWatts, double seconds) {
        lived += seconds;
        double air = surroundings.room().degC(lived);
        transformer.ambient(air);
        heatsink.ambient(air);
        double between = specimen.thermal().betweenKelvinPerWatt();
        double across = between < Specimen.OPEN_OHM ? (heatsink.degC() - transformer.degC()) / between : 0;
        transformer.heat(transformerWatts + across, seconds);
        heatsink.heat(heatsinkWatts - across, seconds);
        boolean worn = surroundings.wears() && lived - wornAtSeconds > WORN_EVERY_SECONDS;
        boolean noticed = worn
                || Math.abs(transformer.degC() - circuitTransformerDegC) > NOTICED_KELVIN
                || Math.abs(heatsink.degC() - circuitHeatsinkDegC) > NOTICED_KELVIN;
        if (noticed) {
            refresh();
        }
    }

    private void refresh() {
        balanced = false;
        circuitTransformerDegC = transformer.degC();
        circuitHeatsinkDegC = heatsink.degC();
        wornAtSeconds = lived;
        Specimen now =
                surroundings.wear().at(specimen, new Wear.Life(lived, circuitTransformerDegC, circuitHeatsinkDegC));
        circuit = new Circuit(now, circuitTransformerDegC, circuitHeatsinkDegC);
    }

    Specimen specimen() {
        return specimen;
    }

    Balance balance() {
        return balance;
    }

    /** True while nothing but slow warming changes. */
    boolean steady() {
        return steady;
    }

    double transformerDegC() {
        return transformer.degC();
    }

    double heatsinkDegC() {
        return heatsink.degC();
    }
}
