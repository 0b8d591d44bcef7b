package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A fitted line keeps what its points share. */
class SharedErrorsInFitsTest {
    private final Influence gainX = Influence.rectangular("input meter gain", 0.001, "1");
    private final Influence gainY = Influence.rectangular("rail meter gain", 0.002, "1");
    private final Influence offsetY = Influence.rectangular("rail meter offset", 0.05, "V");

    private List<StraightLine.Point> sweep() {
        List<StraightLine.Point> points = new ArrayList<>();
        for (double x = 11; x <= 15; x++) {
            double y = 3 * x - 2;
            points.add(new StraightLine.Point(
                    Estimate.of(x, gainX.times(x)), Estimate.of(y, gainY.times(y), offsetY.times(1))));
        }
        return points;
    }

    @Test
    void gainsScaleTheSlopeAndOffsetsOnlyTheIntercept() {
        Estimate slope = StraightLine.fit(sweep()).slope();
        assertThat(slope.value()).isCloseTo(3, within(1e-9));
        assertThat(slope.coefficient(gainX)).isCloseTo(-3 * gainX.u(), within(1e-9));
        assertThat(slope.coefficient(gainY)).isCloseTo(3 * gainY.u(), within(1e-9));
        assertThat(slope.coefficient(offsetY)).isCloseTo(0, within(1e-9));
        assertThat(StraightLine.fit(sweep()).intercept().coefficient(offsetY)).isCloseTo(offsetY.u(), within(1e-9));
    }

    @Test
    void oneMeterForBothCancelsItsGain() {
        List<StraightLine.Point> points = sweep().stream()
                .map(p -> new StraightLine.Point(
                        Estimate.of(p.x().value(), gainX.times(p.x().value())),
                        Estimate.of(p.y().value() + 2, gainX.times(p.y().value() + 2))))
                .toList();
        assertThat(StraightLine.fit(points).slope().u()).isCloseTo(0, within(1e-9));
    }

    /** Scatter stated with the points is not counted again as scatter about the line. */
    @Test
    void scatterCountsOnce() {
        SplittableRandom random = new SplittableRandom(17);
        List<StraightLine.Point> points = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            points.add(new StraightLine.Point(
                    Estimate.exact(i),
                    Estimate.of(
                            2 * i + 0.1 * random.nextGaussian(),
                            Influence.normal("noise", 0.1, "V").times(1))));
        }
        StraightLine line = StraightLine.fit(points);
        double expected = 0.1 / Math.sqrt(400 * (400.0 * 400 - 1) / 12);
        assertThat(line.slope().u()).isCloseTo(expected, withinPercentage(8));
    }

    @Test
    void pointsThatCannotTellApartAreRefused() {
        List<StraightLine.Point> same =
                List.of(StraightLine.Point.of(12, 30), StraightLine.Point.of(12, 31), StraightLine.Point.of(12, 32));
        assertThatThrownBy(() -> StraightLine.fit(same)).hasMessageContaining("cannot tell the parameters apart");
        assertThatThrownBy(() -> StraightLine.fit(same.subList(0, 1))).hasMessageContaining("number of points");
    }

    @Test
    void unknownAccuracyOfOnePointMarksTheLine() {
        List<StraightLine.Point> points = new ArrayList<>(sweep());
        points.set(
                0,
                new StraightLine.Point(
                        points.get(0).x().scatterOnly(), points.get(0).y()));
        assertThat(StraightLine.fit(points).slope().known()).isFalse();
    }
}
