package railwitness.analysis.expected;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Rail;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.PointBuilder;
import railwitness.analysis.supply.RippleMeans;
import railwitness.analysis.uncertainty.Estimate;

/**
 * Figures as the sheet leads to expect them: the expected points, worked out as measured ones are. What the points share
 * (a part's tolerance, the model's own error) cancels in a difference as it does in a measurement.
 */
public final class ExpectedFigures {
    private static final double SAYS_NOTHING = 0.35;

    /** A difference that is expected near zero is bounded by a share of the rail instead of itself. */
    private static final double SMALL = 0.02;

    private static final double PERCENT = 100;
    private static final Set<FigureName> OF_INPUT_CURRENT =
            Set.of(FigureName.NO_LOAD_INPUT_POWER, FigureName.FULL_LOAD_EFFICIENCY, FigureName.AVERAGE_EFFICIENCY);

    private ExpectedFigures() {}

    /** Those that the sheet can bound, in the order of {@link FigureName}. */
    public static List<Figure> of(Design design, List<OperatingPoint> points, Expectations expectations) {
        List<OperatingPoint> expected =
                points.stream().map(point -> at(point, expectations.at(point))).toList();
        boolean current = points.stream()
                .map(expectations::at)
                .filter(at -> !at.values().isEmpty())
                .allMatch(at -> at.value(Expected.INPUT_CURRENT).isPresent());
        return Figures.of(expected, Optional.of(design), RippleMeans.unknown()).found().stream()
                .filter(figure -> current || !OF_INPUT_CURRENT.contains(figure.name()))
                .filter(figure -> figure.value().u() > 0 && bounded(figure, design))
                .toList();
    }

    private static OperatingPoint at(OperatingPoint point, Expected expected) {
        PointBuilder at = OperatingPoint.of(point.stage(), point.step())
                .during(point.fromSeconds(), point.toSeconds())
                .inputVoltage(Estimate.exact(point.input().voltage().value()), point.inputSource())
                .inputCurrent(expected.value(Expected.INPUT_CURRENT)
                        .orElse(Estimate.exact(point.input().current().value())));
        point.setVolts().ifPresent(at::setVolts);
        point.rails()
                .forEach((name, rail) -> expected.value(Expected.voltage(name)).ifPresent(volts -> {
                    at.railVoltage(name, volts);
                    at.railCurrent(name, Estimate.exact(rail.current().value()));
                    expected.value(Expected.ripple(name)).ifPresent(ripple -> at.ripple(name, ripple));
                }));
        return at.build();
    }

    private static boolean bounded(Figure figure, Design design) {
        double u = figure.value().u();
        return u <= SAYS_NOTHING * Math.abs(figure.value().value()) || u <= SMALL * scale(figure, design);
    }

    private static double scale(Figure figure, Design design) {
        Rail rail = figure.rail().flatMap(design::rail).orElse(design.rails().get(0));
        double volts = Math.abs(rail.nominalVolts());
        return switch (figure.unit()) {
            case "V" -> figure.name() == FigureName.RIPPLE ? 0 : volts;
            case "ohm" ->
                rail.fullLoadAmperes().isPresent()
                        ? volts / rail.fullLoadAmperes().getAsDouble()
                        : 0;
            case "%" -> PERCENT;
            default -> 0;
        };
    }
}
