package railwitness.analysis.soak;

import static railwitness.analysis.design.FigureName.*;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;

/** A hold as figures, and those it cannot give. */
public final class SoakFigures {
    /** The figures that come from a hold alone. */
    public static final Set<FigureName> NAMES = Set.of(
            FINAL_HEAT_SINK_TEMPERATURE,
            FINAL_HEAT_SINK_RISE,
            FINAL_TRANSFORMER_TEMPERATURE,
            FINAL_TRANSFORMER_RISE,
            HIGHEST_FINAL_TEMPERATURE,
            HIGHEST_FINAL_RISE,
            THERMAL_TIME_CONSTANT,
            TIME_TO_FINAL_TEMPERATURE,
            THERMAL_RESISTANCE,
            DRIFT,
            DRIFT_BY_TEMPERATURE,
            AGEING,
            CHANGE_OVER_HOLD,
            DRIFT_OF_RIPPLE,
            EFFICIENCY_WHILE_HELD,
            DRIFT_OF_EFFICIENCY,
            CHANGE_OF_EFFICIENCY,
            EXCURSIONS,
            GAPS,
            RESTARTS);

    private static final double BAND = 0.95;
    private static final double HOPELESS_KELVIN = 5;

    private final Soak soak;
    private final List<OperatingPoint> held;
    private final List<Figure> found = new ArrayList<>();
    private final List<NotFound> missing = new ArrayList<>();
    private final String hold;

    private SoakFigures(Soak soak, List<OperatingPoint> points) {
        this.soak = soak;
        held = points.stream()
                .filter(point -> point.stage().equals("hold")
                        && point.step().startsWith(soak.record().name() + " "))
                .toList();
        double hours = (soak.record().toSeconds() - soak.record().fromSeconds()) / 3600;
        String name = soak.record().name();
        hold = (hours >= 1
                        ? String.format(Locale.ROOT, "hold of %.3g h", hours)
                        : String.format(Locale.ROOT, "hold of %.3g min", 60 * hours))
                + (soak.others().isEmpty() ? "" : " at " + name);
    }

    /** Works the figures out, in the order of {@link FigureName}. */
    public static SoakFigures of(Soak soak, List<OperatingPoint> points) {
        SoakFigures figures = new SoakFigures(soak, points);
        figures.temperatures();
        figures.resistance();
        figures.rails();
        figures.efficiency();
        figures.counts();
        figures.found.sort(Comparator.comparing(Figure::name));
        figures.missing.sort(Comparator.comparing(NotFound::name));
        return figures;
    }

    public List<Figure> found() {
        return List.copyOf(found);
    }

    public List<NotFound> notFound() {
        return List.copyOf(missing);
    }

    private void enter(FigureName name, Optional<String> rail, Estimate value, String at) {
        found.add(new Figure(name, rail, value, at, name.definition()));
    }

    private void temperatures() {
        Optional<PlaceTemperature> sink = soak.place(Soak::isHeatSink);
        place(
                sink,
                FINAL_HEAT_SINK_TEMPERATURE,
                FINAL_HEAT_SINK_RISE,
                "no thermometer on the heat sink, or too short a hold to foretell it");
        Optional<PlaceTemperature> core = soak.place(place -> place.startsWith("transformer"));
        if (core.isPresent()) {
            place(core, FINAL_TRANSFORMER_TEMPERATURE, FINAL_TRANSFORMER_RISE, "");
        }
        soak.temperatures().stream()
                .max(Comparator.comparingDouble(one -> one.end().value()))
                .ifPresent(hottest -> place(Optional.of(hottest), HIGHEST_FINAL_TEMPERATURE, HIGHEST_FINAL_RISE, ""));
        sink.or(() -> soak.temperatures().stream().findFirst()).ifPresent(first -> {
            String at = first.place() + ", " + hold;
            first.timeConstantSeconds()
                    .ifPresentOrElse(
                            tau -> enter(THERMAL_TIME_CONSTANT, Optional.empty(), tau, at),
                            () -> miss(THERMAL_TIME_CONSTANT, "the temperature moved too little to tell it"));
            first.secondsToFinal()
                    .ifPresentOrElse(
                            until -> enter(TIME_TO_FINAL_TEMPERATURE, Optional.empty(), until, at),
                            () -> miss(TIME_TO_FINAL_TEMPERATURE, "the hold is too short to tell it"));
        });
    }

    private void place(Optional<PlaceTemperature> place, FigureName temperature, FigureName rise, String why) {
        if (place.isEmpty()) {
            miss(temperature, why);
            miss(rise, why);
            return;
        }
        PlaceTemperature at = place.get();
        double open = at.fit().finalCelsius().coverage(BAND).expanded();
        if (open > Math.max(HOPELESS_KELVIN, 0.5 * Math.max(at.fit().rangeKelvin(), 1))) {
            String reason = String.format(
                    Locale.ROOT, "the %s is too short to foretell it: known to +- %.0f K only", hold, open);
            miss(temperature, reason);
            miss(rise, reason);
            return;
        }
        String where = at.place() + ", " + hold + (at.reached() ? ", reached" : ", foretold");
        enter(temperature, Optional.empty(), at.end(), where);
        at.rise()
                .ifPresentOrElse(
                        value -> enter(
                                rise,
                                Optional.empty(),
                                value,
                                where
                                        + (soak.record().ambient().isPresent()
                                                ? ", above the measured room"
                                                : ", above the room as the bench sheet states it")),
                        () -> miss(rise, "the room's temperature is neither measured nor stated"));
    }

    private void resistance() {
        soak.thermalResistance()
                .ifPresentOrElse(
                        value -> enter(
                                THERMAL_RESISTANCE,
                                Optional.empty(),
                                value,
                                soak.temperatures().get(0).place() + " over the whole loss, " + hold),
                        () -> miss(THERMAL_RESISTANCE, "needs a final rise and the loss at the end of the hold"));
    }

    private void rails() {
        for (HoldDrift drift : soak.drifts()) {
            if (drift.name().equals("voltage")) {
                enter(DRIFT, drift.rail(), drift.perHour(), "second half of the " + hold);
                drift.byTemperature().ifPresent(value -> enter(DRIFT_BY_TEMPERATURE, drift.rail(), value, hold));
                drift.ageingPerHour().ifPresent(value -> enter(AGEING, drift.rail(), value, hold));
            } else if (drift.name().equals("ripple")) {
                enter(DRIFT_OF_RIPPLE, drift.rail(), drift.perHour(), "second half of the " + hold);
            } else if (drift.name().equals("efficiency")) {
                enter(DRIFT_OF_EFFICIENCY, Optional.empty(), drift.perHour(), "second half of the " + hold);
            }
        }
        soak.record().rails().keySet().forEach(rail -> {
            if (soak.drifts().stream().noneMatch(one -> one.rail().equals(Optional.of(rail)))) {
                String why = soak.record().rests() > 0
                        ? "off periods leave no rail to follow: hold a constant load for it"
                        : "the " + hold + " is too short to tell it";
                missing.add(new NotFound(DRIFT, Optional.of(rail), why));
            }
            change(rail);
        });
    }

    /** Before against after: what both averages share cancels. */
    private void change(String rail) {
        if (held.size() < 2) {
            return;
        }
        OperatingPoint first = held.get(0);
        OperatingPoint last = held.get(held.size() - 1);
        if (first.rail(rail).isPresent() && last.rail(rail).isPresent()) {
            Estimate before = first.rails().get(rail).voltage().abs();
            Estimate after = last.rails().get(rail).voltage().abs();
            if (before.value() > 0) {
                enter(
                        CHANGE_OVER_HOLD,
                        Optional.of(rail),
                        after.over(before).plus(-1).scale(100),
                        first.step() + " against " + last.step());
            }
        }
    }

    private void efficiency() {
        if (held.isEmpty()) {
            return;
        }
        OperatingPoint last = held.get(held.size() - 1);
        last.efficiency().ifPresent(end -> {
            enter(EFFICIENCY_WHILE_HELD, Optional.empty(), end, last.step());
            if (held.size() > 1) {
                held.get(0)
                        .efficiency()
                        .filter(begin -> begin.value() > 0)
                        .ifPresent(begin -> enter(
                                CHANGE_OF_EFFICIENCY,
                                Optional.empty(),
                                end.over(begin).plus(-1).scale(100),
                                held.get(0).step() + " against " + last.step()));
            }
        });
    }

    private void counts() {
        if (soak.record().cycleSeconds().isPresent()) {
            miss(EXCURSIONS, "what is cycled leaves every band of its own accord");
        } else {
            enter(EXCURSIONS, Optional.empty(), Estimate.exact(soak.record().excursions()), hold);
        }
        enter(GAPS, Optional.empty(), Estimate.exact(soak.record().gaps()), hold);
        enter(RESTARTS, Optional.empty(), Estimate.exact(soak.record().restarts()), hold);
    }

    private void miss(FigureName name, String reason) {
        missing.add(new NotFound(name, Optional.empty(), reason));
    }
}
