package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.HIGHEST_RAIL_VOLTAGE;
import static railwitness.analysis.design.FigureName.LOAD_EFFECT;
import static railwitness.analysis.design.FigureName.LOAD_EFFECT_AS_WIRED;
import static railwitness.analysis.design.FigureName.LOAD_REGULATION_OF_FULL_LOAD;
import static railwitness.analysis.design.FigureName.LOAD_REGULATION_OF_NOMINAL;
import static railwitness.analysis.design.FigureName.OUTPUT_RESISTANCE;
import static railwitness.analysis.design.FigureName.OUTPUT_RESISTANCE_AS_WIRED;
import static railwitness.analysis.design.FigureName.RAIL_BALANCE;
import static railwitness.analysis.design.FigureName.RAIL_VOLTAGE;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;

/** Figures of the load sweep. */
final class LoadFigures {
    private static final String NO_LOAD_MISSING = "no point without load at nominal input";
    private static final String FULL_LOAD_MISSING = "no point at full load on all rails";

    private final Points points;
    private final Figures.Ledger ledger;

    LoadFigures(Points points, Figures.Ledger ledger) {
        this.points = points;
        this.ledger = ledger;
    }

    void enter() {
        for (String rail : points.rails()) {
            loadEffects(rail);
            resistance(rail, OUTPUT_RESISTANCE_AS_WIRED, SagFit.asWired(points, rail));
            resistance(rail, OUTPUT_RESISTANCE, SagFit.held(points, rail));
            railVoltage(rail);
            highest(rail);
        }
        balance();
    }

    private void loadEffects(String rail) {
        Optional<OperatingPoint> none = points.noLoad();
        Optional<OperatingPoint> full = points.fullLoad();
        String outside = full.filter(point -> points.outOfRegulation(point, rail))
                .map(point -> "; out of regulation at full load")
                .orElse("");
        if (none.isEmpty() || full.isEmpty()) {
            String reason = none.isEmpty() ? NO_LOAD_MISSING : FULL_LOAD_MISSING;
            for (FigureName name : List.of(
                    LOAD_EFFECT_AS_WIRED, LOAD_EFFECT, LOAD_REGULATION_OF_FULL_LOAD, LOAD_REGULATION_OF_NOMINAL)) {
                ledger.miss(name, Optional.of(rail), reason);
            }
            return;
        }
        Estimate asWired = magnitude(none.get(), rail).minus(magnitude(full.get(), rail));
        ledger.enter(LOAD_EFFECT_AS_WIRED, Optional.of(rail), asWired, heating(rail) + outside);
        held(rail, none.get(), full.get(), outside);
    }

    private void held(String rail, OperatingPoint none, OperatingPoint full, String outside) {
        Optional<Holding> holding = Holding.of(points, rail, List.of(none, full));
        if (holding.isEmpty()) {
            for (FigureName name : List.of(LOAD_EFFECT, LOAD_REGULATION_OF_FULL_LOAD, LOAD_REGULATION_OF_NOMINAL)) {
                ledger.miss(name, Optional.of(rail), Holding.MISSING);
            }
            return;
        }
        Estimate reference = full.input().voltage();
        Estimate effect = holding.get().moved(none, rail, reference).minus(magnitude(full, rail));
        String at = String.format(
                Locale.ROOT,
                "held at %.2f V %s%s",
                reference.value(),
                full.inputSource().words(),
                outside);
        ledger.enter(LOAD_EFFECT, Optional.of(rail), effect, at + holding.get().how());
        ledger.enter(
                LOAD_REGULATION_OF_FULL_LOAD,
                Optional.of(rail),
                effect.over(magnitude(full, rail)).scale(100),
                at);
        ofNominal(rail, effect, at);
    }

    private void ofNominal(String rail, Estimate effect, String at) {
        points.design()
                .flatMap(sheet -> sheet.rail(rail))
                .ifPresentOrElse(
                        sheet -> ledger.enter(
                                LOAD_REGULATION_OF_NOMINAL,
                                Optional.of(rail),
                                effect.scale(100 / Math.abs(sheet.nominalVolts())),
                                at),
                        () -> ledger.miss(
                                LOAD_REGULATION_OF_NOMINAL, Optional.of(rail), "no design sheet, no nominal voltage"));
    }

    /** What the repeated 25 % step says of heating between the first and the second time. */
    private String heating(String rail) {
        List<OperatingPoint> quarter = points.loaded().stream()
                .filter(point -> points.isStep(point, 0.25))
                .toList();
        String at = "source and leads as wired";
        if (quarter.size() < 2) {
            return at;
        }
        Estimate change = magnitude(quarter.get(quarter.size() - 1), rail).minus(magnitude(quarter.get(0), rail));
        return at
                + String.format(
                        Locale.ROOT, "; repeated 25 %% step %+.3f V (u %.3f V) by heating", change.value(), change.u());
    }

    private void resistance(String rail, FigureName name, SagFit.Outcome outcome) {
        outcome.fit()
                .ifPresentOrElse(
                        fit -> resistance(rail, name, fit),
                        () -> ledger.miss(name, Optional.of(rail), outcome.reason()));
    }

    /** No part has a resistance below zero: that is said instead of printed, unless its uncertainty reaches zero. */
    private void resistance(String rail, FigureName name, SagFit fit) {
        Estimate ohms = fit.resistance();
        if (!LossSplit.physical(ohms)) {
            ledger.miss(
                    name,
                    Optional.of(rail),
                    String.format(
                            Locale.ROOT,
                            "the rail rises with its load by %.3g V per ampere, which no resistance does: see whether the"
                                    + " input rose, or the leads of two loads are exchanged",
                            -ohms.value()));
        } else {
            ledger.enter(name, Optional.of(rail), ohms, fit.at());
        }
    }

    private void railVoltage(String rail) {
        points.fullLoad()
                .ifPresentOrElse(
                        full -> ledger.enter(
                                RAIL_VOLTAGE,
                                Optional.of(rail),
                                full.rails().get(rail).voltage(),
                                String.format(
                                        Locale.ROOT,
                                        "full load, input %.2f V %s",
                                        full.input().voltage().value(),
                                        full.inputSource().words())),
                        () -> ledger.miss(RAIL_VOLTAGE, Optional.of(rail), FULL_LOAD_MISSING));
    }

    private void highest(String rail) {
        Optional<OperatingPoint> none = points.noLoad();
        if (none.isEmpty()) {
            ledger.miss(HIGHEST_RAIL_VOLTAGE, Optional.of(rail), NO_LOAD_MISSING);
            return;
        }
        double highest = points.design()
                .map(sheet -> sheet.input().highestVolts().orElse(sheet.input().nominalVolts()))
                .orElseGet(() -> points.all().stream()
                        .mapToDouble(point -> point.input().voltage().value())
                        .max()
                        .orElseThrow());
        Estimate target = Estimate.exact(highest);
        Optional<Holding> holding = Holding.to(points, rail, none.get(), highest);
        if (holding.isEmpty()) {
            ledger.miss(HIGHEST_RAIL_VOLTAGE, Optional.of(rail), Holding.MISSING);
            return;
        }
        Estimate magnitude = holding.get().moved(none.get(), rail, target);
        boolean negative = none.get().rails().get(rail).voltage().value() < 0;
        ledger.enter(
                HIGHEST_RAIL_VOLTAGE,
                Optional.of(rail),
                negative ? magnitude.negate() : magnitude,
                String.format(
                        Locale.ROOT,
                        "no load, %.2f V; measured at %.2f V%s",
                        highest,
                        none.get().input().voltage().value(),
                        holding.get().how()));
    }

    private void balance() {
        List<OperatingPoint> loaded = points.loaded();
        if (points.rails().size() != 2 || loaded.isEmpty()) {
            String reason = points.rails().size() == 2 ? "no point with equal loads" : "needs two rails";
            ledger.miss(RAIL_BALANCE, Optional.empty(), reason);
            return;
        }
        OperatingPoint most = loaded.stream()
                .max(java.util.Comparator.comparingDouble(
                        point -> points.fraction(point).orElse(0)))
                .orElseThrow();
        Estimate difference = magnitude(most, points.rails().get(0))
                .minus(magnitude(most, points.rails().get(1)))
                .abs();
        ledger.enter(
                RAIL_BALANCE,
                Optional.empty(),
                difference,
                String.format(
                        Locale.ROOT,
                        "both at %.0f %% of full load",
                        100 * points.fraction(most).orElse(0)));
    }

    private static Estimate magnitude(OperatingPoint point, String rail) {
        return point.rails().get(rail).voltage().abs();
    }
}
