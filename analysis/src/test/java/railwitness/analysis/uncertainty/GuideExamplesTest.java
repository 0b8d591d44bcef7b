package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Worked examples of the GUM (JCGM 100:2008), as printed in public copies. */
class GuideExamplesTest {
    private static final double[] VOLTS = {5.007, 4.994, 5.005, 4.990, 4.999};
    private static final double[] AMPERES = {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
    private static final double[] RADIANS = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};

    private final List<Estimate> together = Estimate.fromSimultaneous(List.of(VOLTS, AMPERES, RADIANS));
    private final Estimate volts = together.get(0);
    private final Estimate amperes = together.get(1);
    private final Estimate radians = together.get(2);

    private Estimate resistance() {
        return volts.over(amperes).times(cosine());
    }

    private Estimate reactance() {
        return volts.over(amperes)
                .times(Estimate.propagate(Math.sin(radians.value()), List.of(radians), Math.cos(radians.value())));
    }

    private Estimate cosine() {
        return Estimate.propagate(Math.cos(radians.value()), List.of(radians), -Math.sin(radians.value()));
    }

    /** GUM 4.4.3: twenty temperatures. */
    @Test
    void meanOfTwentyTemperatures() {
        double[] celsius = {
            96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
            101.11, 101.20, 101.57, 101.84, 102.36, 102.72
        };
        Estimate mean = Estimate.fromSimultaneous(List.of(celsius)).get(0);
        assertThat(mean.value()).isCloseTo(100.145, within(1e-9));
        assertThat(Moments.standardDeviation(celsius)).isCloseTo(1.489, within(5e-4));
        assertThat(mean.u()).isCloseTo(0.333, within(5e-4));
        assertThat(mean.effectiveDegreesOfFreedom()).isCloseTo(19, within(1e-9));
    }

    /** GUM H.2, table H.2: means and correlations of the raw readings. */
    @Test
    void simultaneousReadingsAreCorrelatedAsTheyWere() {
        assertThat(volts.u()).isCloseTo(0.00320936, within(1e-8));
        assertThat(amperes.u()).isCloseTo(0.009471008e-3, within(1e-10));
        assertThat(radians.u()).isCloseTo(0.000752064, within(1e-9));
        assertThat(volts.correlation(amperes)).isCloseTo(-0.355311, within(1e-6));
        assertThat(volts.correlation(radians)).isCloseTo(0.857624, within(1e-6));
        assertThat(amperes.correlation(radians)).isCloseTo(-0.645111, within(1e-6));
    }

    /** GUM H.2, table H.4 (digits beyond the print: a public recomputation). */
    @Test
    void impedanceFromCorrelatedReadings() {
        Estimate impedance = volts.over(amperes);
        assertThat(resistance().value()).isCloseTo(127.7321699, within(1e-6));
        assertThat(resistance().u()).isCloseTo(0.0710714, within(1e-6));
        assertThat(reactance().value()).isCloseTo(219.8465119, within(1e-6));
        assertThat(reactance().u()).isCloseTo(0.2955817, within(1e-6));
        assertThat(impedance.value()).isCloseTo(254.2597019, within(1e-6));
        assertThat(impedance.u()).isCloseTo(0.2363361, within(1e-6));
        assertThat(resistance().correlation(reactance())).isCloseTo(-0.58843, within(1e-5));
        assertThat(resistance().correlation(impedance)).isCloseTo(-0.48526, within(1e-5));
        assertThat(reactance().correlation(impedance)).isCloseTo(0.99251, within(1e-5));
    }

    /** All three come from the same five readings: four degrees of freedom, not more. */
    @Test
    void readingsTakenTogetherCountTheirDegreesOfFreedomOnce() {
        assertThat(resistance().effectiveDegreesOfFreedom()).isCloseTo(4, within(1e-9));
        assertThat(resistance().contributions()).hasSize(1);
    }

    /** GUM H.2.4, table H.5: the wrong way, beside the right one. */
    @Test
    void droppingTheCorrelationGivesAnotherUncertainty() {
        List<Estimate> apart = IntStream.range(0, 3)
                .mapToObj(i -> Estimate.fromSimultaneous(
                                List.of(List.of(VOLTS, AMPERES, RADIANS).get(i)))
                        .get(0))
                .toList();
        assertThat(apart.get(0).over(apart.get(1)).u()).isCloseTo(0.20408, within(1e-5));
    }

    /** GUM H.2, the same readings as power into and out of a converter: a consistency check, not published. */
    @Test
    void powerKeepsTheCovarianceOfItsFactors() {
        assertThat(volts.times(amperes).value()).isCloseTo(98.2853e-3, within(1e-7));
        assertThat(volts.times(amperes).u()).isCloseTo(0.0640e-3, within(5e-8));
        assertThat(volts.times(amperes).times(cosine()).u()).isCloseTo(0.0600e-3, within(5e-8));
    }

    /** GUM G.4.1: b X1 X2 X3 of 10, 5 and 15 readings. */
    @Test
    void effectiveDegreesOfFreedomOfAProduct() {
        Estimate product = Estimate.of(
                100,
                Influence.student("X1", 0.25, "%", 9).times(1),
                Influence.student("X2", 0.57, "%", 4).times(1),
                Influence.student("X3", 0.82, "%", 14).times(1));
        assertThat(product.u()).isCloseTo(1.03, within(5e-3));
        assertThat(product.effectiveDegreesOfFreedom()).isCloseTo(19.0, within(0.05));
        assertThat(product.coverage(0.95).k()).isCloseTo(2.09, within(5e-3));
        assertThat(product.coverage(0.95).expanded()).isCloseTo(2.2, within(0.05));
    }

    /** GUM table G.2, as printed in a public copy. */
    @Test
    void studentFactorsAreThoseOfTheTable() {
        Estimate sixteen = Estimate.of(0, Influence.student("a", 1, "1", 16).times(1));
        assertThat(sixteen.coverage(0.95).k()).isCloseTo(2.12, within(5e-3));
        assertThat(sixteen.coverage(0.9545).k()).isCloseTo(2.17, within(5e-3));
        assertThat(sixteen.coverage(0.99).k()).isCloseTo(2.92, within(5e-3));
        Estimate certain = Estimate.of(0, Influence.normal("a", 1, "1").times(1));
        assertThat(certain.coverage(0.9545).k()).isCloseTo(2.00, within(5e-3));
    }

    /** GUM H.3: correction of a thermometer. */
    @Test
    void calibrationLine() {
        double[] t = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
        double[] b = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
        StraightLine line = StraightLine.fit(IntStream.range(0, t.length)
                .mapToObj(i -> StraightLine.Point.of(t[i] - 20, b[i]))
                .toList());
        assertThat(line.intercept().value()).isCloseTo(-0.171203790131, within(1e-10));
        assertThat(line.intercept().u()).isCloseTo(0.002877597815, within(1e-10));
        assertThat(line.slope().value()).isCloseTo(0.00218269773989, within(1e-10));
        assertThat(line.slope().u()).isCloseTo(0.000667938773, within(1e-10));
        assertThat(line.intercept().correlation(line.slope())).isCloseTo(-0.930, within(5e-4));
        assertThat(line.leastSquares().residualSumOfSquares()).isCloseTo(0.000110096583, within(1e-10));
        assertThat(line.at(10).value()).isCloseTo(-0.149376812732, within(1e-10));
        assertThat(line.at(10).u()).isCloseTo(0.004138595753, within(1e-10));
        assertThat(line.at(10).effectiveDegreesOfFreedom()).isCloseTo(9, within(1e-9));
    }

    /** GUM H.5: ten days of five readings of a voltage standard, rebuilt from daily means and deviations. */
    @Test
    void meanOverDaysThatDiffer() {
        double[] microvolts = {172, 116, 13, 144, 106, 31, 60, 125, 163, 41};
        double[] s = {60, 77, 111, 101, 67, 93, 80, 73, 88, 86};
        OneWay days = new OneWay(IntStream.range(0, 10)
                .mapToObj(day -> fiveReadings(microvolts[day], s[day]))
                .toList());
        assertThat(days.meanOfGroups().value()).isCloseTo(97, within(0.5));
        assertThat(days.withinStandardDeviation()).isCloseTo(85, within(0.5));
        assertThat(days.f()).isCloseTo(2.25, within(0.02));
        assertThat(days.meanOfGroups().u()).isCloseTo(18, within(0.5));
        assertThat(days.meanOfGroups().effectiveDegreesOfFreedom()).isEqualTo(9);
        assertThat(days.betweenEffect()).isCloseTo(43, within(0.5));
        assertThat(days.meanOfAll().u()).isCloseTo(13, within(0.5));
    }

    private static double[] fiveReadings(double mean, double s) {
        return new double[] {mean - s * Math.sqrt(2), mean, mean, mean, mean + s * Math.sqrt(2)};
    }
}
