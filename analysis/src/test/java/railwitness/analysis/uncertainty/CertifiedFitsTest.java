package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Least squares against NIST StRD certified values and NBS Handbook 91 (Natrella), as printed in public copies. */
class CertifiedFitsTest {
    private static final double NINE_DIGITS_PERCENT = 1e-7;

    private static List<StraightLine.Point> points(double[] x, double[] y) {
        return IntStream.range(0, x.length)
                .mapToObj(i -> StraightLine.Point.of(x[i], y[i]))
                .toList();
    }

    /** NIST StRD Norris. */
    @Test
    void norris() {
        Table table = new Table("norris.txt");
        StraightLine line = StraightLine.fit(points(table.column(1), table.column(0)));
        close(line.intercept().value(), -0.262323073774029);
        close(line.intercept().u(), 0.232818234301152);
        close(line.slope().value(), 1.00211681802045);
        close(line.slope().u(), 0.429796848199937E-03);
        close(line.leastSquares().residualStandardDeviation(), 0.884796396144373);
        close(line.leastSquares().residualSumOfSquares(), 26.6173985294224);
        assertThat(line.leastSquares().degreesOfFreedom()).isEqualTo(34);
    }

    /** NIST StRD NoInt1. */
    @Test
    void noIntercept1() {
        double[] x = IntStream.rangeClosed(60, 70).asDoubleStream().toArray();
        double[] y = IntStream.rangeClosed(130, 140).asDoubleStream().toArray();
        StraightLine line = StraightLine.throughOrigin(points(x, y));
        close(line.slope().value(), 2.07438016528926);
        close(line.slope().u(), 0.165289256198347E-01);
        close(line.leastSquares().residualStandardDeviation(), 3.56753034006338);
        assertThat(line.intercept().value()).isZero();
    }

    /** NIST StRD NoInt2. */
    @Test
    void noIntercept2() {
        StraightLine line = StraightLine.throughOrigin(points(new double[] {4, 5, 6}, new double[] {3, 4, 4}));
        close(line.slope().value(), 0.727272727272727);
        close(line.slope().u(), 0.420827318078432E-01);
        close(line.leastSquares().residualStandardDeviation(), 0.369274472937998);
    }

    /** NIST StRD Longley. */
    @Test
    void longley() {
        LeastSquares fit = longley(new Table("longley.txt"));
        close(fit.parameters().get(0).value(), -3482258.63459582);
        close(fit.parameters().get(1).value(), 15.0618722713733);
        close(fit.parameters().get(6).value(), 1829.15146461355);
        close(fit.residualStandardDeviation(), 304.854073561965);
        assertThat(fit.conditionNumber()).isGreaterThan(1e4);
    }

    private static LeastSquares longley(Table table) {
        List<List<Estimate>> design = new ArrayList<>();
        for (double[] row : table.rows()) {
            List<Estimate> regressors = new ArrayList<>(List.of(Estimate.exact(1)));
            IntStream.rangeClosed(1, 6).forEach(j -> regressors.add(Estimate.exact(row[j])));
            design.add(regressors);
        }
        List<Estimate> y =
                table.rows().stream().map(row -> Estimate.exact(row[0])).toList();
        return new LeastSquares("employment", design, y);
    }

    /** NBS Handbook 91, 5-4.1 and 5-4.2. */
    @Test
    void natrella() {
        double[] x = {30, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000, 1100, 1200, 1300, 1400, 1500};
        double[] y = {4642, 4612, 4565, 4513, 4476, 4433, 4389, 4347, 4303, 4251, 4201, 4140, 4100, 4073, 4024, 3999};
        StraightLine line = StraightLine.fit(points(x, y));
        assertThat(line.slope().value()).isCloseTo(-0.44985482, within(1e-8));
        assertThat(Math.pow(line.slope().u(), 2)).isCloseTo(0.000025649045, within(1e-12));
        assertThat(line.intercept().value()).isCloseTo(4654.9846, within(1e-4));
        assertThat(Math.pow(line.intercept().u(), 2)).isCloseTo(19.879452, within(1e-5));
        assertThat(line.leastSquares().residualStandardDeviation()).isCloseTo(9.277617, within(1e-6));
        assertThat(Math.pow(line.at(1200).u(), 2)).isCloseTo(10.53, within(0.05));
        assertThat(Math.pow(line.uOfFuturePoint(750), 2)).isCloseTo(91.45, withinPercentage(1));
    }

    private static void close(double actual, double certified) {
        assertThat(actual).isCloseTo(certified, withinPercentage(NINE_DIGITS_PERCENT));
    }
}
