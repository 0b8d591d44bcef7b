package railwitness.analysis.soak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import railwitness.analysis.steady.Autocorrelation;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Table;

/** Burn-in figures against data and numbers from elsewhere. */
class SoakOutsideTest {
    /** NIST StRD, univariate set Mavro: 50 readings of a filter's transmittance with certified lag-1 autocorrelation 0.937989183438248. */
    private static final double[] MAVRO = {
        2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150, 2.00150, 2.00170, 2.00180,
        2.00180, 2.00190, 2.00190, 2.00210, 2.00200, 2.00160, 2.00140, 2.00130, 2.00130, 2.00150, 2.00150, 2.00160,
        2.00150, 2.00140, 2.00130, 2.00140, 2.00150, 2.00140, 2.00150, 2.00160, 2.00150, 2.00160, 2.00190, 2.00200,
        2.00200, 2.00210, 2.00220, 2.00230, 2.00240, 2.00250, 2.00270, 2.00260, 2.00260, 2.00260, 2.00270, 2.00260,
        2.00250, 2.00240
    };

    private static double[] times(int n, double step) {
        return IntStream.range(0, n).mapToDouble(i -> i * step).toArray();
    }

    private static Estimate drift(double[] values) {
        return HoldDrift.of(
                        "voltage",
                        Optional.of("plus"),
                        times(values.length, 60),
                        values,
                        Optional.empty(),
                        Optional.empty())
                .orElseThrow()
                .perHour();
    }

    /** What a fit that takes them for independent would say of the same slope: the wrong way. */
    private static double naive(double[] y) {
        int n = y.length;
        double mean = Arrays.stream(y).average().orElseThrow();
        double middle = (n - 1) / 2.0;
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < n; i++) {
            xx += (i - middle) * (i - middle);
            xy += (i - middle) * (y[i] - mean);
        }
        double left = 0;
        for (int i = 0; i < n; i++) {
            double off = y[i] - mean - xy / xx * (i - middle);
            left += off * off;
        }
        return Math.sqrt(left / (n - 2) / xx) * 100 / mean * 60;
    }

    /** A certified record whose readings resemble those before them: its drift is told with U far wider than independent ones'. */
    @Test
    void certifiedRecordWithMemoryIsNotTakenForIndependent() {
        assertThat(new Autocorrelation(MAVRO).at(1)).isCloseTo(0.937989183438248, within(1e-9));
        Estimate drift = drift(MAVRO);
        double[] late = Arrays.copyOfRange(MAVRO, 25, 50);
        assertThat(drift.u()).isGreaterThan(2 * naive(late));
        assertThat(drift.value()).as("it rose over its second half").isGreaterThan(0);
    }

    private static Estimate slope(double[] y, double[] x) {
        return CorrelatedFit.slopes("scatter", y, x).orElseThrow().get(0);
    }

    private static double[] count(int n) {
        return IntStream.rangeClosed(1, n).mapToDouble(i -> i).toArray();
    }

    /**
     * NIST StRD Norris, certified: slope 1.00211681802045, its standard deviation 0.429796848199937e-3 if the residuals are
     * independent. In the order in which they were taken each resembles the one before (0.36); in order of x they do not.
     */
    @Test
    void certifiedLineIsFound() {
        Table norris = new Table("norris.txt");
        double[] y = norris.column(0);
        double[] x = norris.column(1);
        Estimate asTaken = slope(y, x);
        int[] order = IntStream.range(0, x.length)
                .boxed()
                .sorted(java.util.Comparator.comparingDouble(i -> x[i]))
                .mapToInt(i -> i)
                .toArray();
        Estimate byX = slope(
                Arrays.stream(order).mapToDouble(i -> y[i]).toArray(),
                Arrays.stream(order).mapToDouble(i -> x[i]).toArray());
        assertThat(asTaken.value()).isCloseTo(1.00211681802045, within(1e-12));
        assertThat(byX.value()).isCloseTo(1.00211681802045, within(1e-12));
        System.out.println("Norris as taken " + asTaken + ", by x " + byX);
        assertThat(byX.u()).isBetween(0.999 * 0.429796848199937e-3, 1.6 * 0.429796848199937e-3);
        assertThat(asTaken.u()).as("the wrong way: taken for independent").isGreaterThan(2 * 0.429796848199937e-3);
    }

    /**
     * The lines through Lew and Mavro as the NIST/SEMATECH e-Handbook prints them in its case studies 1.4.2.5 and 1.4.2.6
     * (values from memory, worked out anew elsewhere): 0.7366e-2 with 0.3405, and 0.1847e-4 with 0.331e-5. Lew swings about a
     * mean that stands still, so that nothing drifts; Mavro's readings resemble each other, so that the 5.6 standard
     * deviations of independent ones are not to be believed.
     */
    @Test
    void certifiedRecordsDriftAsTheHandbookHasIt() {
        double[] lew = new Table("lew.txt").column(0);
        Estimate still = slope(lew, count(lew.length));
        assertThat(still.value()).isCloseTo(0.7366e-2, within(0.5e-6));
        assertThat(Math.abs(still.value())).isLessThan(still.coverage(0.95).expanded());
        assertThat(still.u()).as("swings do not add up").isBetween(0.2 * 0.3405, 2 * 0.3405);

        Estimate creeping = slope(MAVRO, count(MAVRO.length));
        assertThat(creeping.value()).isCloseTo(0.1847e-4, within(0.5e-8));
        assertThat(creeping.u()).isGreaterThan(2 * 0.331e-5);
        assertThat(Math.abs(creeping.value()))
                .isLessThan(creeping.coverage(0.95).expanded());
        System.out.println("Lew " + still + ", Mavro " + creeping);
    }

    /** The same values in an order drawn at random have no memory, and then U is that of independent readings. */
    @Test
    void sameValuesWithoutOrderAre() {
        SplittableRandom random = new SplittableRandom(12);
        double[] shuffled = MAVRO.clone();
        for (int i = shuffled.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            double one = shuffled[i];
            shuffled[i] = shuffled[j];
            shuffled[j] = one;
        }
        double alone = naive(Arrays.copyOfRange(shuffled, 25, 50));
        assertThat(drift(shuffled).u()).isBetween(0.7 * alone, 2 * alone);
    }

    /**
     * First order: 63.21, 86.47, 95.02, 98.17 and 99.33 % after one to five time constants (textbook values), half-way after
     * 0.693 of one; a record of two must lead to the rest.
     */
    @Test
    void publishedFirstOrderCurveIsLedToItsEnd() {
        double[] reached = {0.6321, 0.8647, 0.9502, 0.9817, 0.9933};
        double[] seconds = times(240, 10);
        double[] celsius = Arrays.stream(seconds)
                .map(t -> 25 + 40 * -Math.expm1(-t / 1200))
                .toArray();
        WarmUp fit = WarmUp.of(seconds, celsius).orElseThrow();
        double end = fit.finalCelsius().value();
        assertThat(end)
                .isCloseTo(
                        65,
                        within(Math.max(0.1, fit.finalCelsius().coverage(0.95).expanded())));
        for (int k = 1; k <= reached.length; k++) {
            double at = fit.at(k * 1200.0).value();
            assertThat(at).isCloseTo(25 + 40 * reached[k - 1], within(0.3));
        }
        assertThat(fit.at(0.693 * 1200).value()).isCloseTo(45, within(0.1));
    }

    /** Each rule just within and just beyond its own number, on a straight course: the first is steady, the second not. */
    @Test
    void everyRuleTurnsAtItsOwnNumber() {
        record Turn(StabilityRule rule, double kelvinPerHour) {}
        List<Turn> turns = List.of(
                new Turn(StabilityRule.IEC_60034_1, 2),
                new Turn(StabilityRule.IEC_61010_1, 2),
                new Turn(StabilityRule.IEC_62368_1, 6),
                new Turn(StabilityRule.IEC_62368_1_BELOW_LIMIT, 12),
                new Turn(StabilityRule.IEC_61810_7, 6),
                new Turn(StabilityRule.IEC_60598, 1),
                new Turn(StabilityRule.IEC_62282_2, 12),
                new Turn(StabilityRule.IEEE_2780, 8),
                new Turn(StabilityRule.ONE_KELVIN_PER_HOUR, 1));
        double[] seconds = times(721, 10);
        for (Turn turn : turns) {
            for (double share : new double[] {0.97, 1.03}) {
                double[] celsius = Arrays.stream(seconds)
                        .map(t -> 40 + share * turn.kelvinPerHour() * t / 3600)
                        .toArray();
                assertThat(turn.rule().at(seconds, celsius).steady())
                        .as("%s at %.2f of its number", turn.rule().words(), share)
                        .isEqualTo(share < 1);
            }
            double[] still = new double[seconds.length];
            Arrays.fill(still, 40);
            OptionalDouble met = turn.rule().firstMet(seconds, still);
            assertThat(met.orElseThrow())
                    .as("%s needs its record", turn.rule().words())
                    .isGreaterThanOrEqualTo(turn.rule().needsSeconds());
        }
    }
}
