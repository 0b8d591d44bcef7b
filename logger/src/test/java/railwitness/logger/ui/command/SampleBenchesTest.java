package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The benches that people may begin from fit the demo's unit and plan. */
class SampleBenchesTest {
    private static final String SAMPLES = "../sessions-sample/";

    @ParameterizedTest
    @ValueSource(strings = {"one-meter-and-knobs", "resistor-bank", "full"})
    void aBenchIsInOrder(String bench) {
        Said said = Said.by(
                "check",
                SAMPLES + "demo/design.toml",
                SAMPLES + "benches/" + bench + ".toml",
                SAMPLES + "demo/plan.toml");
        assertThat(said.err()).isEmpty();
        assertThat(said.exitCode()).isEqualTo(ExitCode.DONE);
    }
}
