package railwitness.analysis.supply;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;
import railwitness.analysis.uncertainty.Term;

/** The drive as a drain shows it: made-up courses whose truth is known, and traces of a circuit simulator. */
class DriveWaveformTest {
    private static final double STEP = 1e-7;
    private static final Optional<Term> GAIN =
            Optional.of(Influence.rectangular("gain of the scope", 0.02, "1").times(1));

    private static void holds(Estimate found, double truth, String what) {
        double u = found.coverage(0.95).expanded();
        System.out.printf("%s %.6g +- %.2g, truly %.6g%n", what, found.value(), u, truth);
        assertThat(found.value()).as(what).isCloseTo(truth, within(u));
    }

    private static double[] samples(String file) throws IOException {
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(DriveWaveformTest.class.getResourceAsStream(file), StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#"))
                    .mapToDouble(line -> Double.parseDouble(line.split(",")[1]))
                    .toArray();
        }
    }

    /**
     * Recorded by ngspice (a push-pull supply made from the burn-in sheet, duty 0.45 at 25 kHz; each file says how), read at 200 ns.
     * Truth from the whole record at 10 ns by other ways: time below 3 V, and the voltage between centre tap and drain
     * integrated over that time.
     */
    @Test
    void simulatedDrainsGiveTheirDrive() throws IOException {
        DriveWaveform choke =
                DriveWaveform.of(samples("drain-choke.csv"), 2e-7, GAIN).orElseThrow();
        holds(choke.frequencyHz(), 25000, "choke, Hz");
        holds(choke.duty(), 0.45503, "choke, duty");
        holds(choke.voltSeconds(), 240.877e-6, "choke, V s");
        DriveWaveform capacitor =
                DriveWaveform.of(samples("drain-capacitor.csv"), 2e-7, GAIN).orElseThrow();
        holds(capacitor.frequencyHz(), 25000, "capacitor, Hz");
        holds(capacitor.duty(), 0.49878, "capacitor, low");
        holds(capacitor.voltSeconds(), 263.933e-6, "capacitor, V s");
        assertThat(choke.droop().orElseThrow().value()).isBetween(0.5, 4.0);
    }

    /** A course with what it is made of. */
    private static double[] course(double hertz, double duty, double volts, double droop, double spike, double begin) {
        double[] samples = new double[2000];
        double winding = volts - 0.2;
        // while the other switch is on the mean of the winding is the same as while this one is: no mean over a period
        double high = winding / (1 - droop / 2);
        Arrays.setAll(samples, i -> {
            double phase = (i * STEP * hertz + begin) % 1;
            if (phase < duty) {
                return 0.2;
            }
            if (phase >= 0.5 && phase < 0.5 + duty) {
                double through = (phase - 0.5) / duty;
                double ring = phase - 0.5 < 0.01 ? spike : 0;
                return volts + high * (1 - droop * through) + ring;
            }
            return volts;
        });
        return samples;
    }

    /** 200 drives drawn at random (seed 31): every figure within its U of the truth; the gain is exact here. */
    @Test
    void everyDriveIsFoundWithinItsU() {
        SplittableRandom random = new SplittableRandom(31);
        for (int k = 0; k < 200; k++) {
            double hertz = random.nextDouble(15e3, 60e3);
            double duty = random.nextDouble(0.2, 0.48);
            double volts = random.nextDouble(9, 15);
            double droop = random.nextDouble(0, 0.08);
            double[] samples = course(hertz, duty, volts, droop, 0, random.nextDouble());
            DriveWaveform found = DriveWaveform.of(samples, STEP, GAIN).orElseThrow();
            String which = "seed 31, case " + k;
            assertThat(found.frequencyHz().value())
                    .as(which)
                    .isCloseTo(hertz, within(Math.sqrt(6) * found.frequencyHz().u()));
            assertThat(found.duty().value()).as(which).isCloseTo(duty, within(1.5 * STEP * hertz));
            assertThat(found.voltSeconds().value())
                    .as(which)
                    .isCloseTo(
                            (volts - 0.2) * duty / hertz,
                            within(found.voltSeconds().coverage(0.95).expanded()));
            assertThat(found.droop().orElseThrow().value()).as(which).isCloseTo(100 * droop, within(0.5));
        }
    }

    @Test
    void aSpikeIsToldFromTheLevelBelowIt() {
        DriveWaveform found =
                DriveWaveform.of(course(25e3, 0.45, 13, 0, 9, 0.3), STEP, GAIN).orElseThrow();
        assertThat(found.spike().orElseThrow().value()).isCloseTo(9, within(0.2));
        assertThat(found.droop().orElseThrow().value())
                .as("a spike is no droop")
                .isCloseTo(0, within(0.1));
    }

    @Test
    void whatIsNoDriveGivesNoFigures() {
        double[] sine = new double[2000];
        Arrays.setAll(sine, i -> 30 * Math.sin(i * 0.03));
        assertThat(DriveWaveform.of(sine, STEP, GAIN))
                .as("a sine without a mean")
                .isEmpty();
        assertThat(DriveWaveform.of(new double[500], STEP, GAIN)).as("nothing").isEmpty();
        double[] few = Arrays.copyOf(course(25e3, 0.45, 13, 0, 0, 0.3), 380);
        assertThat(DriveWaveform.of(few, STEP, GAIN)).as("less than a period").isEmpty();
    }

    @Test
    void withoutStatedGainVoltsAreOfUnknownAccuracyAndTimesAreNot() {
        DriveWaveform found = DriveWaveform.of(course(25e3, 0.45, 13, 0, 9, 0.3), STEP, Optional.empty())
                .orElseThrow();
        assertThat(found.voltSeconds().known()).isFalse();
        assertThat(found.frequencyHz().known()).isTrue();
    }
}
