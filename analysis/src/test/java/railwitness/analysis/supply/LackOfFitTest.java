package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** A line through points that do not lie on one is less sure than the meters alone say. */
class LackOfFitTest {
    private static final double[] AMPERES = {1, 2, 3, 4};

    /**
     * Standard error of a slope by hand: residuals e with e'e = 4 x 25 mV^2, two degrees of freedom, Sxx = 5 A^2; root of two
     * times that, since another sweep of the same range scatters as much.
     */
    @Test
    void residualsOfSevenMillivoltsAreSevenMillivoltsInTheSlopesUncertainty() {
        double[] off = {0.005, -0.005, -0.005, 0.005}; // no part of it lies along a line
        Estimate ohms = resistance(off);
        double byHand = Math.sqrt(2) * Math.sqrt(4 * 0.005 * 0.005 / 2 / 5);
        assertThat(ohms.u()).isBetween(0.95 * byHand, 1.1 * byHand);
    }

    @Test
    void pointsOnALineLeaveTheMetersUncertaintyAlone() {
        assertThat(resistance(new double[4]).u()).isLessThan(1e-3);
    }

    private static Estimate resistance(double[] off) {
        List<OperatingPoint> points = new ArrayList<>();
        for (int i = 0; i < AMPERES.length; i++) {
            double volts = 38 - 0.5 * AMPERES[i] + off[i];
            points.add(OperatingPoint.of("load-sweep", 25 * (i + 1) + " %")
                    .during(10 * i, 10 * i + 5)
                    .inputVoltage(Estimate.exact(13))
                    .inputCurrent(Estimate.exact(6 * AMPERES[i]))
                    .railVoltage("plus", read(volts, i))
                    .railCurrent("plus", Estimate.exact(AMPERES[i]))
                    .railVoltage("minus", read(-volts, 10 + i))
                    .railCurrent("minus", Estimate.exact(AMPERES[i]))
                    .build());
        }
        return Figures.of(points, Optional.empty(), RippleMeans.unknown())
                .value(FigureName.OUTPUT_RESISTANCE_AS_WIRED, "plus")
                .orElseThrow();
    }

    private static Estimate read(double volts, int which) {
        return Estimate.of(volts, Influence.normal("noise " + which, 1e-3, "V").times(1));
    }
}
