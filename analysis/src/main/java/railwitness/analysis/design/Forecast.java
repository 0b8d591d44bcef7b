package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Works a {@link Prediction} out: the rails by the kind of filter, the losses part by part, the input by their sum. */
final class Forecast {
    private static final int ROUNDS = 12;
    private static final double SETTLED_AMPERES = 1e-7;

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
        return design.converter().regulated() ? held(free) : free;
    }

    /** What the extra core current drops in switches and primary, V. */
    private double coreDrop(double inputVolts) {
        double extra = deviation.extraCoreWatts() * squareOfInput(inputVolts);
        return extra / inputVolts * (path.switchOhms() + path.primaryOhms() + path.inputCapacitorOhms());
    }

    /** A regulated unit holds its nominal rails as long as it can. */
    private Conversion held(Conversion free) {
        List<Feed> feeds = new ArrayList<>();
        for (int rail = 0; rail < names.size(); rail++) {
            Feed feed = free.feeds().get(rail);
            double nominal = Math.abs(design.rails().get(rail).nominalVolts());
            feeds.add(new Feed(
                    Math.min(nominal, feed.volts()), feed.meanSquare(), feed.capacitorSquare(), feed.rippleHz()));
        }
        return new Conversion(feeds, free.primarySquare(), free.primaryMean());
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
        for (int rail = 0; rail < loads.length; rail++) {
            Feed feed = conversion.feeds().get(rail);
            String name = names.get(rail);
            volts.put(name, Math.signum(design.rails().get(rail).nominalVolts()) * feed.volts());
            rippleOf(name, feed).ifPresent(value -> ripple.put(name, value));
        }
        Map<String, Double> losses = losses(inputVolts, loads, conversion);
        double output = output(loads, conversion);
        double amperes = (output + sum(losses)) / inputVolts;
        return new Prediction(inputVolts, volts, ripple, amperes, output, losses, flux(inputVolts), path.leftOut());
    }

    /** Current in the capacitor times its impedance: resistance and reactance in quadrature, V rms. */
    private OptionalDouble rippleOf(String name, Feed feed) {
        if (path.capacitorFarads() == 0 || path.frequencyHz() == 0) {
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
        if (transformer.coreAreaSquareMillimetres().isEmpty() || path.frequencyHz() == 0) {
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
