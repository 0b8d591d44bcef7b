package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.AVERAGE_EFFICIENCY;
import static railwitness.analysis.design.FigureName.FULL_LOAD_EFFICIENCY;
import static railwitness.analysis.design.FigureName.NO_LOAD_INPUT_POWER;
import static railwitness.analysis.design.FigureName.STANDBY_CURRENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.uncertainty.Estimate;

/** Figures of power: efficiencies, what the unit takes without load and when off. */
final class PowerFigures {
    private static final List<Double> QUARTERS = List.of(0.25, 0.5, 0.75, 1.0);

    private final Points points;
    private final Figures.Ledger ledger;

    PowerFigures(Points points, Figures.Ledger ledger) {
        this.points = points;
        this.ledger = ledger;
    }

    void enter() {
        average();
        points.fullLoad()
                .flatMap(OperatingPoint::efficiency)
                .ifPresentOrElse(
                        value -> ledger.enter(
                                FULL_LOAD_EFFICIENCY,
                                Optional.empty(),
                                value,
                                input(points.fullLoad().orElseThrow())),
                        () -> ledger.miss(
                                FULL_LOAD_EFFICIENCY, Optional.empty(), "no point at full load on all rails"));
        points.noLoad()
                .ifPresentOrElse(
                        none -> ledger.enter(
                                NO_LOAD_INPUT_POWER,
                                Optional.empty(),
                                none.input().power(),
                                input(none)),
                        () -> ledger.miss(
                                NO_LOAD_INPUT_POWER, Optional.empty(), "no point without load at nominal input"));
        points.stage("standby").stream()
                .findFirst()
                .ifPresentOrElse(
                        off -> ledger.enter(
                                STANDBY_CURRENT,
                                Optional.empty(),
                                off.input().current(),
                                "remote turn-on off, " + input(off)),
                        () -> ledger.miss(STANDBY_CURRENT, Optional.empty(), "no point with the remote turn-on off"));
    }

    private void average() {
        List<Estimate> efficiencies = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        for (double quarter : QUARTERS) {
            points.step(quarter)
                    .flatMap(OperatingPoint::efficiency)
                    .ifPresentOrElse(
                            efficiencies::add, () -> missing.add(String.format(Locale.ROOT, "%.0f %%", 100 * quarter)));
        }
        if (missing.isEmpty()) {
            ledger.enter(
                    AVERAGE_EFFICIENCY,
                    Optional.empty(),
                    Estimate.mean(efficiencies),
                    "25, 50, 75, 100 % of full load, input voltage "
                            + points.fullLoad().orElseThrow().inputSource().words());
        } else {
            ledger.miss(
                    AVERAGE_EFFICIENCY,
                    Optional.empty(),
                    "no point at " + String.join(", ", missing) + " of full load on all rails");
        }
    }

    private static String input(OperatingPoint point) {
        return String.format(
                Locale.ROOT,
                "input %.2f V %s",
                point.input().voltage().value(),
                point.inputSource().words());
    }
}
