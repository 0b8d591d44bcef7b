package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Works a {@link Prediction} out: the rails by the kind of filter, the losses part by part, the input by their sum. What
 * hangs on a part that the sheet does not give is left open.
 */
final class Forecast {
    private static final int ROUNDS = 12;
    private static final double SETTLED_AMPERES = 1e-7;

    /** What an unloaded unit draws hangs on these. */
    private static final List<String> STANDING = List.of("control_A", "gate_and_switching_W", "core_loss_W");

    /** How far a loaded rail sags, and what that costs, hangs on these. */
    private static final List<String> IN_SERIES = List.of(
            "frequency_Hz",
            "duty",
            "on_resistance_ohm",
            "primary_resistance_ohm",
            "secondary_resistance_ohm",
            "slope_ohm",
            "drop_V",
            "leakage_nH",
            "capacitor_esr_ohm");

    /** Behind a choke the rail follows the mean of the pulses; leakage and capacitor hardly matter to it. */
    private static final List<String> IN_SERIES_BEHIND_A_CHOKE = List.of(
            "frequency_Hz",
            "duty",
            "choke_uH",
            "on_resistance_ohm",
            "primary_resistance_ohm",
            "secondary_resistance_ohm",
            "slope_ohm",
            "drop_V");

    /** Whether an unloaded rail behind a choke stands at the peak, at the mean or between hangs on these. */
    private static final List<String> UNLOADED_BEHIND_A_CHOKE = List.of("frequency_Hz", "duty", "choke_uH");

    private final Design design;
    private final Transformer transformer;
    private final Deviation deviation;
    private final Path path;
    private final List<String> names;

    Forecast(Design design, Transformer transformer, Deviation deviation) {
        this.design = design;
        this.transformer = transformer;
        this.deviation = deviation;
        this.path = Path.of(design, transformer, deviation);
        this.names = design.rails().stream().map(Rail::name).toList();
    }

    Prediction at(double inputVolts, Map<String, Double> loadAmperes) {
        double[] loads = names.stream()
                .mapToDouble(name -> loadAmperes.getOrDefault(name, 0.0))
                .toArray();
        double coreAmperes = coreWatts(inputVolts) / inputVolts;
        Conversion conversion = convert(inputVolts, coreAmperes, loads, Optional.empty());
        double before = coreAmperes;
        for (int round = 0; round < ROUNDS; round++) {
            Map<String, Double> losses = losses(inputVolts, loads, conversion);
            double power = output(loads, conversion) + sum(losses);
            double converted = power / inputVolts - path.controlAmperes() - deviation.extraStandbyAmperes();
            if (Math.abs(converted - before) < SETTLED_AMPERES) {
                break;
            }
            conversion = convert(inputVolts, converted, loads, Optional.of(conversion));
            before = converted;
        }
        return prediction(inputVolts, loads, conversion);
    }

    private Conversion convert(double inputVolts, double inputAmperes, double[] loads, Optional<Conversion> start) {
        double behindCore = inputVolts - coreDrop(inputVolts);
        Conversion free = design.converter().filter() == FilterInput.CAPACITOR
                ? new CapacitorInput(path, deviation.pulses(), names).at(behindCore, inputAmperes, loads, start)
                : new ChokeInput(path, deviation.pulses(), names).at(behindCore, loads);
        return design.rails().stream().anyMatch(design::regulates) ? held(free) : free;
    }

    /** What the extra core current drops in switches and primary, V. */
    private double coreDrop(double inputVolts) {
        double extra = deviation.extraCoreWatts() * squareOfInput(inputVolts);
        return extra / inputVolts * (path.switchOhms() + path.primaryOhms() + path.inputCapacitorOhms());
    }

    /** A held rail stands at its nominal voltage as long as it can; the others follow what the control does. */
    private Conversion held(Conversion free) {
        double share = controlledShare(free);
        List<Feed> feeds = new ArrayList<>();
        for (int rail = 0; rail < names.size(); rail++) {
            Feed feed = free.feeds().get(rail);
            Rail sheet = design.rails().get(rail);
            feeds.add(feed.held(
                    design.regulates(sheet) ? Math.min(sheet.nominalMagnitude(), feed.volts()) : share * feed.volts()));
        }
        return new Conversion(feeds, free.primarySquare(), free.primaryMean());
    }

    /** To what share of their free voltage the control brings the rails; 1 where the converter does not regulate. */
    private double controlledShare(Conversion free) {
        double share = 1;
        for (int rail = 0; rail < names.size() && design.converter().regulated(); rail++) {
            Rail sheet = design.rails().get(rail);
            double volts = free.feeds().get(rail).volts();
            if (design.regulates(sheet) && volts > 0) {
                share = Math.min(share, sheet.nominalMagnitude() / volts);
            }
        }
        return share;
    }

    /** A rail that holds itself behind an unregulated converter burns what it does not need. */
    private double seriesRegulatorWatts(double[] loads, Conversion conversion) {
        double watts = 0;
        for (int rail = 0; rail < loads.length && !design.converter().regulated(); rail++) {
            Feed feed = conversion.feeds().get(rail);
            watts += (feed.freeVolts() - feed.volts()) * loads[rail];
        }
        return watts;
    }

    private double output(double[] loads, Conversion conversion) {
        double watts = 0;
        for (int rail = 0; rail < loads.length; rail++) {
            watts += loads[rail] * conversion.feeds().get(rail).volts();
        }
        return watts;
    }

    private Map<String, Double> losses(double inputVolts, double[] loads, Conversion conversion) {
        Map<String, Double> watts = new LinkedHashMap<>();
        watts.put("control", (path.controlAmperes() + deviation.extraStandbyAmperes()) * inputVolts);
        watts.put("gate and switching", path.gateWatts());
        watts.put("core", coreWatts(inputVolts));
        watts.put("switches", path.switchOhms() * conversion.primarySquare());
        watts.put("primary winding", path.primaryOhms() * conversion.primarySquare());
        double ripple = conversion.primarySquare() - conversion.primaryMean() * conversion.primaryMean();
        watts.put("input capacitor", path.inputCapacitorOhms() * Math.max(0, ripple));
        watts.put("secondary windings", path.secondaryOhms() * squares(conversion));
        watts.put("rectifier", rectifierWatts(loads, conversion));
        watts.put("chokes", path.chokeOhms() * chokeSquares(loads, conversion));
        watts.put(
                "filter capacitors",
                path.capacitorOhms()
                        * conversion.feeds().stream()
                                .mapToDouble(Feed::capacitorSquare)
                                .sum());
        watts.put("series regulators", seriesRegulatorWatts(loads, conversion));
        watts.put(
                "bleeders",
                path.bleederSiemens()
                        * conversion.feeds().stream()
                                .mapToDouble(feed -> feed.volts() * feed.volts())
                                .sum());
        watts.values().removeIf(value -> value == 0);
        return watts;
    }

    private double rectifierWatts(double[] loads, Conversion conversion) {
        double watts = path.diodeOhms() * squares(conversion);
        for (int rail = 0; rail < loads.length; rail++) {
            double bleeder = conversion.feeds().get(rail).volts() * path.bleederSiemens();
            watts += path.diodeVolts() * (loads[rail] + bleeder);
        }
        return watts;
    }

    private double chokeSquares(double[] loads, Conversion conversion) {
        if (design.converter().filter() == FilterInput.CAPACITOR) {
            return squares(conversion);
        }
        double sum = 0;
        for (int rail = 0; rail < loads.length; rail++) {
            sum += loads[rail] * loads[rail] + conversion.feeds().get(rail).capacitorSquare();
        }
        return sum;
    }

    private static double squares(Conversion conversion) {
        return conversion.feeds().stream().mapToDouble(Feed::meanSquare).sum();
    }

    private double coreWatts(double inputVolts) {
        return (path.coreWatts() + deviation.extraCoreWatts()) * squareOfInput(inputVolts);
    }

    private double squareOfInput(double inputVolts) {
        double relative = inputVolts / design.input().nominalVolts();
        return relative * relative;
    }

    private Prediction prediction(double inputVolts, double[] loads, Conversion conversion) {
        Map<String, Double> volts = new LinkedHashMap<>();
        Map<String, Double> ripple = new LinkedHashMap<>();
        boolean loaded = DoubleStream.of(loads).anyMatch(load -> load > 0);
        boolean sagKnown = known(choke() ? IN_SERIES_BEHIND_A_CHOKE : IN_SERIES);
        for (int rail = 0; rail < loads.length; rail++) {
            Feed feed = conversion.feeds().get(rail);
            Rail sheet = design.rails().get(rail);
            if (railKnown(sheet, feed, loaded, sagKnown)) {
                volts.put(sheet.name(), Math.signum(sheet.nominalVolts()) * feed.volts());
            }
            if (!loaded || sagKnown || choke() && known(UNLOADED_BEHIND_A_CHOKE)) {
                rippleOf(sheet.name(), feed).ifPresent(value -> ripple.put(sheet.name(), value));
            }
        }
        Map<String, Double> losses = losses(inputVolts, loads, conversion);
        double output = output(loads, conversion);
        double amperes = (output + sum(losses)) / inputVolts;
        boolean complete = known(STANDING) && (!loaded || sagKnown);
        return new Prediction(
                inputVolts, volts, ripple, amperes, output, losses, flux(inputVolts), leftOut(), complete);
    }

    /** Without load the turns tell a rail behind a capacitor; a held rail is known wherever the turns can give it. */
    private boolean railKnown(Rail rail, Feed feed, boolean loaded, boolean sagKnown) {
        if (design.regulates(rail) && feed.volts() >= rail.nominalMagnitude()) {
            return true;
        }
        return loaded ? sagKnown : !choke() || known(UNLOADED_BEHIND_A_CHOKE);
    }

    private boolean choke() {
        return design.converter().filter() == FilterInput.CHOKE;
    }

    private boolean known(List<String> keys) {
        return leftOut().stream().noneMatch(keys::contains);
    }

    private List<String> leftOut() {
        if (!choke() || path.chokeHenries() > 0) {
            return path.leftOut();
        }
        List<String> all = new ArrayList<>(path.leftOut());
        all.add("choke_uH");
        return all;
    }

    /** Current in the capacitor times its impedance: resistance and reactance in quadrature, V rms. */
    private OptionalDouble rippleOf(String name, Feed feed) {
        if (path.capacitorFarads() == 0
                || path.frequencyHz() == 0
                || path.leftOut().contains("capacitor_esr_ohm")) {
            return OptionalDouble.empty();
        }
        double resistance = path.capacitorOhms() * tired(name, Deviation.TiredCapacitor::resistanceFactor);
        double farads = path.capacitorFarads() * tired(name, Deviation.TiredCapacitor::capacitanceShare);
        double reactance = 1 / (2 * Math.PI * feed.rippleHz() * farads);
        return OptionalDouble.of(Math.sqrt(feed.capacitorSquare()) * Math.hypot(resistance, reactance));
    }

    private double tired(String name, java.util.function.ToDoubleFunction<Deviation.TiredCapacitor> what) {
        return deviation
                .tired()
                .filter(capacitor -> capacitor.rail().equals(name))
                .map(what::applyAsDouble)
                .orElse(1.0);
    }

    private OptionalDouble flux(double inputVolts) {
        if (transformer.coreAreaSquareMillimetres().isEmpty()
                || path.frequencyHz() == 0
                || path.leftOut().contains("duty")) {
            return OptionalDouble.empty();
        }
        double area = transformer.coreAreaSquareMillimetres().getAsDouble() * 1e-6;
        return OptionalDouble.of(
                FluxDensity.peakTesla(inputVolts, path.duty(), path.frequencyHz(), transformer.primaryTurns(), area));
    }

    private static double sum(Map<String, Double> watts) {
        return watts.values().stream().mapToDouble(Double::doubleValue).sum();
    }
}
