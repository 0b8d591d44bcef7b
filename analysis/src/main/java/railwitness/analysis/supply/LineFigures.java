package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.DROP_OUT_VOLTAGE;
import static railwitness.analysis.design.FigureName.EFFECTIVE_TURNS_RATIO;
import static railwitness.analysis.design.FigureName.LINE_REGULATION;
import static railwitness.analysis.design.FigureName.STEP_UP_SLOPE;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** Figures of the line sweep. */
final class LineFigures {
    private final Points points;
    private final Figures.Ledger ledger;

    LineFigures(Points points, Figures.Ledger ledger) {
        this.points = points;
        this.ledger = ledger;
    }

    void enter() {
        for (String rail : points.rails()) {
            Optional<LineFit> fit = LineFit.of(points, rail);
            fit.ifPresentOrElse(
                    line -> ledger.enter(STEP_UP_SLOPE, Optional.of(rail), line.slope(), line.at()),
                    () -> ledger.miss(STEP_UP_SLOPE, Optional.of(rail), whyNoLine()));
            ratio(rail, fit);
            regulation(rail, fit);
        }
        dropOut();
    }

    private String whyNoLine() {
        return points.stage("line-sweep").isEmpty()
                ? "no line sweep"
                : "the line sweep has not two inputs apart with the rails up";
    }

    private void ratio(String rail, Optional<LineFit> fit) {
        Optional<Converter> converter = points.design().map(sheet -> sheet.converter());
        if (converter.isEmpty()) {
            ledger.miss(
                    EFFECTIVE_TURNS_RATIO,
                    Optional.of(rail),
                    "without a design sheet the filter's kind is not known; see the step-up slope");
        } else if (fit.isEmpty()) {
            ledger.miss(EFFECTIVE_TURNS_RATIO, Optional.of(rail), whyNoLine());
        } else if (regulates(rail)) {
            belowRegulation(rail, converter.get());
        } else {
            ratioOf(rail, fit.get(), converter.get());
        }
    }

    private boolean regulates(String rail) {
        return points.design()
                .flatMap(sheet -> sheet.rail(rail).map(sheet::regulates))
                .orElse(points.design()
                        .map(sheet -> sheet.converter().regulated())
                        .orElse(false));
    }

    private void ratioOf(String rail, LineFit fit, Converter converter) {
        if (converter.filter() == FilterInput.CAPACITOR) {
            ledger.enter(EFFECTIVE_TURNS_RATIO, Optional.of(rail), fit.slope(), fit.at());
            return;
        }
        OptionalDouble duty = converter.bothDuties();
        if (duty.isEmpty()) {
            ledger.miss(EFFECTIVE_TURNS_RATIO, Optional.of(rail), "choke input: the sheet does not state the duty");
            return;
        }
        String at = fit.at() + String.format(Locale.ROOT, ", slope over both duties %.3g", duty.getAsDouble());
        ledger.enter(EFFECTIVE_TURNS_RATIO, Optional.of(rail), fit.slope().scale(1 / duty.getAsDouble()), at);
    }

    /** A regulated unit shows its ratio only where it can no longer hold the rail. */
    private void belowRegulation(String rail, Converter converter) {
        List<OperatingPoint> below = LineFit.sweep(points).stream()
                .filter(point -> points.outOfRegulation(point, rail))
                .toList();
        if (below.size() < 2) {
            ledger.miss(EFFECTIVE_TURNS_RATIO, Optional.of(rail), "the unit regulates");
        } else {
            ratioOf(rail, LineFit.alone(below, rail), converter);
        }
    }

    private void regulation(String rail, Optional<LineFit> fit) {
        if (fit.isEmpty()) {
            ledger.miss(LINE_REGULATION, Optional.of(rail), whyNoLine());
            return;
        }
        List<OperatingPoint> line = fit.get().points();
        OperatingPoint low = line.get(0);
        OperatingPoint high = line.get(line.size() - 1);
        Estimate change = volts(high, rail).minus(volts(low, rail));
        ledger.enter(
                LINE_REGULATION,
                Optional.of(rail),
                change.over(atNominal(rail, fit.get())).scale(100),
                fit.get().at()
                        + Holding.nominal(points).stream()
                                .mapToObj(nominal -> String.format(
                                        Locale.ROOT, ", over the rail at %.2f V at the terminals", nominal))
                                .findFirst()
                                .orElse(""));
    }

    /** The rail at the nominal input at the terminals and the sweep's load: the nearest point moved by the slope. */
    private Estimate atNominal(String rail, LineFit fit) {
        OperatingPoint nearest = fit.points().stream()
                .min(Comparator.comparingDouble(this::fromNominal))
                .orElseThrow();
        OptionalDouble nominal = Holding.nominal(points);
        if (nominal.isEmpty()) {
            return volts(nearest, rail);
        }
        Estimate distance = nearest.input().voltage().negate().plus(nominal.getAsDouble());
        return volts(nearest, rail).plus(fit.slope().times(distance));
    }

    private double fromNominal(OperatingPoint point) {
        double volts = point.input().voltage().value();
        return Math.abs(volts - Holding.nominal(points).orElse(volts));
    }

    private static Estimate volts(OperatingPoint point, String rail) {
        return point.rails().get(rail).voltage().abs();
    }

    /** Between the lowest input at which the rails stood and the highest below it at which they did not. */
    private void dropOut() {
        List<OperatingPoint> up = LineFit.sweep(points);
        if (up.isEmpty()) {
            ledger.miss(DROP_OUT_VOLTAGE, Optional.empty(), whyNoLine());
            return;
        }
        OperatingPoint lowest = up.get(0);
        Estimate lowestUp = lowest.input().voltage();
        OptionalDouble further = points.stage("line-sweep").stream()
                .filter(point -> !points.up(point))
                .mapToDouble(point -> lowered(lowest, point))
                .filter(volts -> volts > 0)
                .min();
        if (further.isEmpty()) {
            ledger.miss(
                    DROP_OUT_VOLTAGE,
                    Optional.empty(),
                    String.format(Locale.ROOT, "the rails still stood at the lowest input, %.2f V", lowestUp.value()));
            return;
        }
        double half = further.getAsDouble() / 2;
        Estimate middle = lowestUp.plus(-half)
                .with(Influence.rectangular("distance of the line steps", half, "V")
                        .times(1));
        ledger.enter(
                DROP_OUT_VOLTAGE,
                Optional.empty(),
                middle,
                String.format(Locale.ROOT, "between %.2f and %.2f V", lowestUp.value() - 2 * half, lowestUp.value()));
    }

    /**
     * How much further the input was lowered, V. By the supply's settings where they are known: once the unit has given up
     * it draws nothing, and its terminals rise by what the leads dropped before.
     */
    private static double lowered(OperatingPoint up, OperatingPoint down) {
        return up.setVolts().isPresent() && down.setVolts().isPresent()
                ? up.setVolts().getAsDouble() - down.setVolts().getAsDouble()
                : up.input().voltage().value() - down.input().voltage().value();
    }
}
