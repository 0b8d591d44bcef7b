package railwitness.analysis.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Table;

/** Lag-1 autocorrelation against NIST StRD certified values, as printed in public copies. */
class CertifiedAutocorrelationTest {

    private static void check(double[] readings, double r1) {
        assertThat(new Autocorrelation(readings).at(1)).isCloseTo(r1, within(1e-10));
    }

    /** NIST StRD Lottery, Lew, Mavro, Michelso. */
    @Test
    void realRecords() {
        check(new Table("lottery.txt").column(0), -0.120948622967393);
        check(new Table("lew.txt").column(0), -0.307304800605679);
        check(new Table("mavro.txt").column(0), 0.937989183438248);
        check(new Table("michelso.txt").column(0), 0.535199668621283);
    }

    /**
     * Lew at lags 0 to 49 as the NIST/SEMATECH e-Handbook, 1.3.5.12, prints them to two places (copied from a public test
     * of them).
     */
    @Test
    void everyLagOfARecordThatSwings() {
        double[] printed = {
            1.00, -0.31, -0.74, 0.77, 0.21, -0.90, 0.38, 0.63, -0.77, -0.12, 0.82, -0.40, -0.55, 0.73, 0.07, -0.76,
            0.40, 0.48, -0.70, -0.03, 0.70, -0.41, -0.43, 0.67, 0.00, -0.66, 0.42, 0.39, -0.65, 0.03, 0.63, -0.42,
            -0.36, 0.64, -0.05, -0.60, 0.43, 0.32, -0.64, 0.08, 0.58, -0.45, -0.28, 0.62, -0.10, -0.55, 0.45, 0.25,
            -0.61, 0.14
        };
        Autocorrelation lew = new Autocorrelation(new Table("lew.txt").column(0));
        for (int lag = 0; lag < printed.length; lag++) {
            assertThat(lew.at(lag)).as("lag %d", lag).isCloseTo(printed[lag], within(0.0051));
        }
    }

    /** NIST StRD NumAcc1 and NumAcc2. */
    @Test
    void madeUpRecords() {
        check(new double[] {10000001, 10000003, 10000002}, -0.5);
        double[] readings = new double[1001];
        for (int i = 0; i < 1001; i++) {
            readings[i] = i == 0 ? 1.2 : i % 2 == 1 ? 1.1 : 1.3;
        }
        check(readings, -0.999);
    }

    /** Mavro is a meter creeping: fifty readings are worth a handful. */
    @Test
    void creepingMeterIsWorthAFewReadings() {
        Average average = Average.of("Mavro", "V", new Table("mavro.txt").column(0));
        assertThat(average.effectiveCount()).isLessThan(6);
        assertThat(average.mean().u()).isGreaterThan(3 * average.standardDeviation() / Math.sqrt(50));
    }
}
