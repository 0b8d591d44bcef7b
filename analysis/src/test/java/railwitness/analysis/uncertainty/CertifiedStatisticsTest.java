package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Means, deviations and groups against NIST StRD certified values, as printed in public copies. */
class CertifiedStatisticsTest {

    private static void check(double[] readings, double mean, double deviation, double percent) {
        assertThat(Moments.mean(readings)).isCloseTo(mean, withinPercentage(1e-12));
        assertThat(Moments.standardDeviation(readings)).isCloseTo(deviation, withinPercentage(percent));
    }

    /** NIST StRD Lottery, Lew, Mavro, Michelso. */
    @Test
    void realRecords() {
        check(new Table("lottery.txt").column(0), 518.958715596330, 291.699727470969, 1e-12);
        check(new Table("lew.txt").column(0), -177.435000000000, 277.332168044316, 1e-12);
        check(new Table("mavro.txt").column(0), 2.00185600000000, 0.000429123454003053, 1e-9);
        check(new Table("michelso.txt").column(0), 299.852400000000, 0.0790105478190518, 1e-9);
    }

    /** NIST StRD NumAcc1 to NumAcc3: digits lost by a one-pass formula are kept. */
    @Test
    void littleScatterOnALargeMean() {
        check(new double[] {10000001, 10000003, 10000002}, 10000002, 1, 1e-12);
        check(alternating(1.2, 1.1, 1.3), 1.2, 0.1, 1e-10);
        check(alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 1e-7);
    }

    /** The wrong way, beside the right one: one pass over NumAcc3 gives another standard deviation. */
    @Test
    void onePassFormulaWouldLoseTheDigits() {
        double sum = 0;
        double squares = 0;
        double[] readings = alternating(1000000.2, 1000000.1, 1000000.3);
        for (double x : readings) {
            sum += x;
            squares += x * x;
        }
        double onePass = Math.sqrt((squares - sum * sum / 1001) / 1000);
        assertThat(Math.abs(onePass - 0.1)).isGreaterThan(1e-3);
    }

    static double[] alternating(double first, double low, double high) {
        double[] readings = new double[1001];
        readings[0] = first;
        for (int i = 1; i < 1001; i++) {
            readings[i] = i % 2 == 1 ? low : high;
        }
        return readings;
    }

    /** NIST StRD SiRstv. */
    @Test
    void siliconResistivity() {
        OneWay instruments = new OneWay(List.of(
                new double[] {196.3052, 196.1240, 196.1890, 196.2569, 196.3403},
                new double[] {196.3042, 196.3825, 196.1669, 196.3257, 196.0422},
                new double[] {196.1303, 196.2005, 196.2889, 196.0343, 196.1811},
                new double[] {196.2795, 196.1748, 196.1494, 196.1485, 195.9885},
                new double[] {196.2119, 196.1051, 196.1850, 196.0052, 196.2090}));
        assertThat(instruments.betweenSumOfSquares()).isCloseTo(5.11462616E-02, within(1e-9));
        assertThat(instruments.withinSumOfSquares()).isCloseTo(2.1663656E-01, within(1e-9));
        assertThat(instruments.f()).isCloseTo(1.18046237440255, within(1e-8));
        assertThat(instruments.withinStandardDeviation()).isCloseTo(0.104076068334656, within(1e-9));
        assertThat(instruments.betweenDegreesOfFreedom()).isEqualTo(4);
        assertThat(instruments.withinDegreesOfFreedom()).isEqualTo(20);
    }
}
