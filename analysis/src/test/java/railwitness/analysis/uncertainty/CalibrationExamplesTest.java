package railwitness.analysis.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Worked examples of EA-4/02 and of course notes, as printed in public copies; coverage where shapes differ. */
class CalibrationExamplesTest {
    private static final double TWO_SIGMA = 0.9545;

    private static Term normal(String name, double u) {
        return Influence.normal(name, u, "1").times(1);
    }

    private static Term rectangle(String name, double u) {
        return new Influence(name, Shape.RECTANGULAR, u, "1", Double.POSITIVE_INFINITY).times(1);
    }

    /** EA-4/02 S2: 10 kg mass, milligrams. */
    @Test
    void massOfTenKilograms() {
        Estimate mass = Estimate.of(
                10_000_025,
                normal("standard", 22.5),
                rectangle("drift", 8.66),
                normal("comparator", 14.4),
                rectangle("eccentricity", 5.77),
                rectangle("buoyancy", 5.77));
        assertThat(mass.u()).isCloseTo(29.3, within(0.1));
        assertThat(mass.coverage(TWO_SIGMA).expanded()).isBetween(57.5, 59.0);
    }

    /** EA-4/02 S3: 10 kohm resistor, milliohms. */
    @Test
    void standardResistor() {
        Estimate resistor = Estimate.of(
                10_000_178,
                normal("standard", 2.5),
                rectangle("drift", 5.8),
                rectangle("temperature of the standard", 1.6),
                rectangle("temperature of the resistor", 3.2),
                new Influence("parasitic", Shape.TRIANGULAR, 4.1, "mohm", Double.POSITIVE_INFINITY).times(1),
                Influence.student("ratio", 0.7, "mohm", 4).times(1));
        assertThat(resistor.u()).isCloseTo(8.33, within(0.05));
        assertThat(resistor.coverage(TWO_SIGMA).k()).isCloseTo(2.00, within(5e-3));
        assertThat(Rounding.expanded(resistor, resistor.coverage(TWO_SIGMA)).uncertaintyText())
                .isEqualTo("17");
    }

    private static final Estimate HAND_HELD_METER = Estimate.of(
            0.1,
            normal("source certificate", 0.001),
            Influence.resolution("last digit", 0.1, "V").times(-1),
            Influence.rectangular("source stability", 0.011, "V").times(-1));

    /**
     * EA-4/02 S9: hand-held meter at 100 V; one rectangle rules, and k = 2 would be wrong. The example takes the
     * factor of that rectangle alone, 1.65; with the rest convolved it is 1.71; both print U = 0.05 V.
     */
    @Test
    void handHeldMeter() {
        Coverage coverage = HAND_HELD_METER.coverage(0.95);
        assertThat(HAND_HELD_METER.u()).isCloseTo(0.030, within(5e-4));
        assertThat(coverage.k()).isBetween(1.645, 1.715);
        assertThat(coverage.expanded()).isCloseTo(0.05, within(1e-3));
        assertThat(coverage.how()).isEqualTo("convolution of the contributions");
    }

    @Test
    void factorOfTheHandHeldMeterHoldsWhatItPromises() {
        Outcomes drawn = new MonteCarlo(9, 200_000).run(List.of(HAND_HELD_METER), x -> x[0]);
        double u = HAND_HELD_METER.coverage(0.95).expanded();
        assertThat(drawn.share(new Interval(0.1 - u, 0.1 + u))).isCloseTo(0.95, within(0.002));
    }

    /** EA-4/02 S9.14: the factor of one rectangle alone is 0.95 root 3. */
    @Test
    void oneRectangleHasItsOwnFactor() {
        Coverage coverage = Estimate.of(0, rectangle("only", 1)).coverage(0.95);
        assertThat(coverage.k()).isCloseTo(0.95 * Math.sqrt(3), within(1e-6));
        assertThat(coverage.how()).isEqualTo("rectangular");
    }

    /** EA-4/02 S10 and S10.13: two rectangles make a trapezoid; 50 and 25 um half-widths give k = 1.83. */
    @Test
    void twoRectanglesMakeATrapezoid() {
        Estimate calliper = Estimate.of(
                0,
                Influence.rectangular("mechanical effects", 0.050, "mm").times(1),
                Influence.rectangular("resolution", 0.025, "mm").times(1));
        double beta = 1.0 / 3;
        double k = (1 - Math.sqrt(0.05 * (1 - beta * beta))) / Math.sqrt((1 + beta * beta) / 6);
        assertThat(calliper.coverage(0.95).k()).isCloseTo(k, within(1e-5)).isCloseTo(1.83, within(5e-3));
        assertThat(calliper.coverage(0.95).how()).isEqualTo("trapezoidal");
    }

    /** EA-4/02 S12: two contributions, one of 2 degrees of freedom. */
    @Test
    void waterMeter() {
        Estimate error =
                Estimate.of(0.001, Influence.student("readings", 6.0e-4, "1", 2).times(1), normal("reference", 6.8e-4));
        assertThat(error.u()).isCloseTo(9.1e-4, within(5e-6));
        assertThat(error.coverage(TWO_SIGMA).k()).isCloseTo(2.28, within(5e-3));
        assertThat(error.coverage(TWO_SIGMA).expanded()).isCloseTo(2.0e-3, within(0.1e-3));
    }

    /** Divisors of GUM 4.3 and EA-4/02. */
    @Test
    void divisorsOfTheShapes() {
        assertThat(Influence.rectangular("a", 2e-6, "1").u()).isCloseTo(1.1547e-6, within(1e-10));
        assertThat(Influence.triangular("a", 1, "1").u()).isCloseTo(1 / Math.sqrt(6), within(1e-12));
        assertThat(Influence.uShaped("a", 0.5, "1").u()).isCloseTo(0.35355, within(1e-5));
        assertThat(Influence.resolution("a", 1, "1").u()).isCloseTo(1 / Math.sqrt(12), within(1e-12));
    }

    /** Course notes on combined degrees of freedom, as printed in a public copy. */
    @Test
    void scatterWithACertainTerm() {
        Estimate sum = Estimate.of(0, Influence.student("a", 0.57, "1", 9).times(1), normal("b", 0.25));
        assertThat(sum.u()).isCloseTo(0.622, within(5e-4));
        assertThat(sum.effectiveDegreesOfFreedom()).isCloseTo(12.8, within(0.05));
    }

    /** The same course notes: X1 / X2 * Y, the shape of an efficiency (the notes round on the way). */
    @Test
    void quotientOfThree() {
        Estimate x1 =
                Estimate.of(0.1820, Influence.student("X1", 0.00093, "1", 9).times(1));
        Estimate x2 =
                Estimate.of(0.1823, Influence.student("X2", 0.00058, "1", 19).times(1));
        Estimate yu =
                Estimate.of(0.6978, Influence.student("Yu", 0.0026, "1", 19).times(1));
        Estimate yc = x1.over(x2).times(yu);
        assertThat(yc.value()).isCloseTo(0.6967, within(5e-5));
        assertThat(yc.u()).isCloseTo(0.00494, within(1e-5));
        assertThat(yc.effectiveDegreesOfFreedom()).isCloseTo(27.7, within(0.25));
        assertThat(yc.coverage(0.95).expanded()).isCloseTo(0.0101, within(5e-5));
    }

    /** JCGM 101, 9.2: sums of four, as printed in a public copy. */
    @Test
    void sumOfFourNormalsOrRectangles() {
        List<Term> normals = List.of(normal("a", 1), normal("b", 1), normal("c", 1), normal("d", 1));
        List<Term> rectangles = List.of(rectangle("a", 1), rectangle("b", 1), rectangle("c", 1), rectangle("d", 1));
        assertThat(Estimate.of(0, normals).coverage(0.95).expanded()).isCloseTo(3.92, within(5e-3));
        assertThat(Estimate.of(0, rectangles).coverage(0.95).expanded()).isCloseTo(3.88, within(5e-3));
    }
}
