package railwitness.safety.guardian;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;

/** The benchmark in short: none is missed. How long it took is printed, not judged. */
@EnabledOnOs(OS.LINUX)
class GuardianBenchmarkTest {
    @Test
    void noDeathIsMissed() throws Exception {
        List<GuardianBenchmark.Times> times = GuardianBenchmark.run(2, 1, 8);
        System.out.println(GuardianBenchmark.rows(times));
        assertThat(times).allMatch(one -> one.missed() == 0 && !one.millis().isEmpty());
    }
}
