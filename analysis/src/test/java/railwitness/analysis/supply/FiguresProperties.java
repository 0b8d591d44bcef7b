package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.reference.SimulatedSupply;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** What must hold for any supply: seeded units made from the closed form, read by seeded instruments. */
class FiguresProperties {
    private static final long SEED = 4_120_626L;
    private static final int UNITS = 12;
    private final Random random = new Random(SEED);

    @BeforeEach
    void printSeed() {
        System.out.println("seed " + SEED);
    }

    /** Gains of the instruments of one bench. */
    private record Scales(double volts, double amperes) {}

    private static final Scales PLAIN = new Scales(1, 1);

    /** Loads and inputs of one seeded test. */
    private record Recipe(double nominal, double lead, double full, double noise) {}

    private Recipe recipe() {
        return new Recipe(12 + 3 * random.nextDouble(), 0.05 * random.nextDouble(), 1 + 4 * random.nextDouble(), 1e-3);
    }

    private static List<OperatingPoint> points(Recipe recipe, Scales scales, double u) {
        List<OperatingPoint> points = new ArrayList<>();
        points.add(point("no-load", recipe, recipe.nominal(), 0, 0, scales, u, 0));
        for (double share : new double[] {0.25, 0.5, 0.75, 1, 0.25}) {
            double amperes = share * recipe.full();
            points.add(
                    point("load-sweep", recipe, recipe.nominal(), amperes, amperes, scales, u, 10.0 * points.size()));
        }
        for (double input : new double[] {0.8, 0.9, 1.05}) {
            double amperes = recipe.full() / 2;
            points.add(point(
                    "line-sweep", recipe, input * recipe.nominal(), amperes, amperes, scales, u, 10.0 * points.size()));
        }
        points.add(point("cross-load", recipe, recipe.nominal(), recipe.full(), 0.1 * recipe.full(), scales, u, 100));
        return points;
    }

    private static OperatingPoint point(
            String stage,
            Recipe recipe,
            double set,
            double plus,
            double minus,
            Scales scales,
            double u,
            double seconds) {
        Design design = SimulatedSupply.design();
        Map<String, Double> loads = Map.of("plus", plus, "minus", minus);
        double terminal = set;
        Prediction predicted = Prediction.of(design, terminal, loads).orElseThrow();
        for (int round = 0; round < 8; round++) {
            terminal = set - recipe.lead() * predicted.inputAmperes();
            predicted = Prediction.of(design, terminal, loads).orElseThrow();
        }
        double v = scales.volts();
        double a = scales.amperes();
        return OperatingPoint.of(stage, stage)
                .during(seconds, seconds + 5)
                .inputVoltage(read(terminal * v, u))
                .inputCurrent(read(predicted.inputAmperes() * a, u))
                .railVoltage("plus", read(predicted.railVolts().get("plus") * v, u))
                .railVoltage("minus", read(predicted.railVolts().get("minus") * v, u))
                .railCurrent("plus", read(plus * a, u))
                .railCurrent("minus", read(minus * a, u))
                .build();
    }

    private static Estimate read(double value, double u) {
        return u == 0
                ? Estimate.exact(value)
                : Estimate.of(value, Influence.normal("reading", u, "1").times(Math.abs(value)));
    }

    private static Figures figures(List<OperatingPoint> points) {
        return Figures.of(points, Optional.empty(), RippleMeans.unknown());
    }

    private static double value(Figures figures, FigureName name) {
        Optional<String> rail = name.perRail() ? Optional.of("plus") : Optional.empty();
        return figures.find(name, rail).orElseThrow().value().value();
    }

    @Test
    void scalingVoltsAndAmperesScalesTheFigures() {
        for (int unit = 0; unit < UNITS; unit++) {
            Recipe recipe = recipe();
            Figures plain = figures(points(recipe, PLAIN, 0));
            Figures scaled = figures(points(recipe, new Scales(3, 7), 0));
            assertScaled(plain, scaled, FigureName.LOAD_EFFECT, 3);
            assertScaled(plain, scaled, FigureName.OUTPUT_RESISTANCE, 3.0 / 7);
            assertScaled(plain, scaled, FigureName.STEP_UP_SLOPE, 1);
            assertScaled(plain, scaled, FigureName.AVERAGE_EFFICIENCY, 1);
            assertScaled(plain, scaled, FigureName.NO_LOAD_INPUT_POWER, 21);
            assertScaled(plain, scaled, FigureName.LOAD_REGULATION_OF_FULL_LOAD, 1);
        }
    }

    private static void assertScaled(Figures plain, Figures scaled, FigureName name, double factor) {
        assertThat(value(scaled, name))
                .as(name.word())
                .isCloseTo(factor * value(plain, name), Percentage.withPercentage(1e-6));
    }

    @Test
    void energyOfEveryPointCloses() {
        for (int unit = 0; unit < UNITS; unit++) {
            for (OperatingPoint point : points(recipe(), PLAIN, 1e-3)) {
                double closure = point.input().power().value()
                        - point.outputPower().value()
                        - point.loss().value();
                assertThat(closure).isCloseTo(0, within(1e-9));
                assertThat(point.efficiency().orElseThrow().value()).isBetween(0.0, 1.0);
            }
        }
    }

    @Test
    void orderOfPointsDoesNotMatter() {
        for (int unit = 0; unit < UNITS; unit++) {
            List<OperatingPoint> points = points(recipe(), PLAIN, 0);
            Figures ordered = figures(points);
            Collections.shuffle(points, random);
            Figures shuffled = figures(points);
            ordered.found().forEach(figure -> assertThat(shuffled.find(figure.name(), figure.rail())
                            .orElseThrow()
                            .value()
                            .value())
                    .isEqualTo(figure.value().value()));
        }
    }

    @Test
    void leadDoesNotMoveTheHeldFigures() {
        for (int unit = 0; unit < UNITS; unit++) {
            Recipe recipe = recipe();
            Recipe stiff = new Recipe(recipe.nominal(), 0, recipe.full(), recipe.noise());
            Figures wired = figures(points(recipe, PLAIN, 0));
            Figures direct = figures(points(stiff, PLAIN, 0));
            assertThat(value(wired, FigureName.OUTPUT_RESISTANCE))
                    .isCloseTo(value(direct, FigureName.OUTPUT_RESISTANCE), Percentage.withPercentage(2));
            assertThat(value(wired, FigureName.OUTPUT_RESISTANCE_AS_WIRED))
                    .isGreaterThanOrEqualTo(value(direct, FigureName.OUTPUT_RESISTANCE_AS_WIRED));
        }
    }

    @Test
    void uncertaintyNeverShrinksWhenTheReadingsGrows() {
        for (int unit = 0; unit < UNITS; unit++) {
            Recipe recipe = recipe();
            Figures fine = figures(points(recipe, PLAIN, 1e-4));
            Figures coarse = figures(points(recipe, PLAIN, 2e-4));
            fine.found().forEach(figure -> assertThat(coarse.find(figure.name(), figure.rail())
                            .orElseThrow()
                            .value()
                            .u())
                    .as(figure.name().word())
                    .isGreaterThanOrEqualTo(figure.value().u()));
        }
    }
}
