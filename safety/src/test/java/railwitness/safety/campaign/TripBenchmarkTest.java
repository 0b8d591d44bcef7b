package railwitness.safety.campaign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.PseudoTerminal;

/** The benchmark in short: none is missed. How long it took is printed, not judged. */
class TripBenchmarkTest {
    @Test
    void noTripIsMissed() {
        assumeTrue(PseudoTerminal.available());
        double[] millis = new TripBenchmark().run(100);
        System.out.println(TripBenchmark.table(millis));
        assertThat(Arrays.stream(millis).allMatch(Double::isFinite)).isTrue();
    }
}
