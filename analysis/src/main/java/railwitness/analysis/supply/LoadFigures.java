package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.HIGHEST_RAIL_VOLTAGE;
import static railwitness.analysis.design.FigureName.LOAD_EFFECT;
import static railwitness.analysis.design.FigureName.LOAD_EFFECT_AS_WIRED;
import static railwitness.analysis.design.FigureName.LOAD_REGULATION_OF_FULL_LOAD;
import static railwitness.analysis.design.FigureName.LOAD_REGULATION_OF_NOMINAL;
import static railwitness.analysis.design.FigureName.OUTPUT_RESISTANCE;
import static railwitness.analysis.design.FigureName.OUTPUT_RESISTANCE_AS_WIRED;
import static railwitness.analysis.design.FigureName.RAIL_BALANCE;
import static railwitness.analysis.design.FigureName.RAIL_BALANCE_AS_WIRED;
import static railwitness.analysis.design.FigureName.RAIL_VOLTAGE;
import static railwitness.analysis.design.FigureName.RAIL_VOLTAGE_AS_WIRED;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;

/** Figures of the load sweep. */
final class LoadFigures {
    /** Further than this from the input that is asked for, relative, a rail is not moved without a line sweep. */
    private static final double FAR = 5e-4;

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
        Estimate loaded = holding.get().moved(full, rail);
        Estimate effect = holding.get().moved(none, rail).minus(loaded);
        String at = holding.get().how() + outside;
        ledger.enter(LOAD_EFFECT, Optional.of(rail), effect, at);
        ledger.enter(
                LOAD_REGULATION_OF_FULL_LOAD,
                Optional.of(rail),
                effect.over(loaded).scale(100),
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
        Optional<OperatingPoint> full = points.fullLoad();
        if (full.isEmpty()) {
            ledger.miss(RAIL_VOLTAGE, Optional.of(rail), FULL_LOAD_MISSING);
            ledger.miss(RAIL_VOLTAGE_AS_WIRED, Optional.of(rail), FULL_LOAD_MISSING);
            return;
        }
        OperatingPoint point = full.get();
        Estimate asRead = point.rails().get(rail).voltage();
        ledger.enter(
                RAIL_VOLTAGE_AS_WIRED,
                Optional.of(rail),
                asRead,
                String.format(
                        Locale.ROOT,
                        "full load, input %.2f V %s",
                        point.input().voltage().value(),
                        point.inputSource().words()));
        double reference =
                Holding.nominal(points).orElse(point.input().voltage().value());
        Holding holding = Holding.to(points, rail, point, reference);
        Estimate held = holding.moved(point, rail);
        ledger.enter(
                RAIL_VOLTAGE,
                Optional.of(rail),
                asRead.value() < 0 ? held.negate() : held,
                "full load, " + holding.how());
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
        if (Math.abs(none.get().input().voltage().value() - highest) > FAR * highest
                && LineFit.of(points, rail).isEmpty()) {
            ledger.miss(HIGHEST_RAIL_VOLTAGE, Optional.of(rail), Holding.MISSING);
            return;
        }
        Holding holding = Holding.to(points, rail, none.get(), highest);
        Estimate magnitude = holding.moved(none.get(), rail);
        boolean negative = none.get().rails().get(rail).voltage().value() < 0;
        ledger.enter(
                HIGHEST_RAIL_VOLTAGE,
                Optional.of(rail),
                negative ? magnitude.negate() : magnitude,
                String.format(
                        Locale.ROOT,
                        "no load, measured at %.2f V, %s",
                        none.get().input().voltage().value(),
                        holding.how()));
    }

    private void balance() {
        List<OperatingPoint> loaded = points.loaded();
        if (points.rails().size() != 2 || loaded.isEmpty()) {
            String reason = points.rails().size() == 2 ? "no point with equal loads" : "needs two rails";
            ledger.miss(RAIL_BALANCE, Optional.empty(), reason);
            ledger.miss(RAIL_BALANCE_AS_WIRED, Optional.empty(), reason);
            return;
        }
        OperatingPoint most = loaded.stream()
                .max(java.util.Comparator.comparingDouble(
                        point -> points.fraction(point).orElse(0)))
                .orElseThrow();
        String at = String.format(
                Locale.ROOT,
                "both at %.0f %% of full load",
                100 * points.fraction(most).orElse(0));
        String one = points.rails().get(0);
        String other = points.rails().get(1);
        ledger.enter(
                RAIL_BALANCE_AS_WIRED,
                Optional.empty(),
                magnitude(most, one).minus(magnitude(most, other)).abs(),
                at + ", source and leads as wired");
        double reference = Holding.nominal(points).orElse(most.input().voltage().value());
        Holding first = Holding.to(points, one, most, reference);
        boolean line =
                LineFit.of(points, one).isPresent() && LineFit.of(points, other).isPresent();
        Holding second = line ? Holding.to(points, other, most, reference) : first;
        ledger.enter(
                RAIL_BALANCE,
                Optional.empty(),
                first.moved(most, one).minus(second.moved(most, other)).abs(),
                at + ", " + first.how());
    }

    private static Estimate magnitude(OperatingPoint point, String rail) {
        return point.rails().get(rail).voltage().abs();
    }
}
