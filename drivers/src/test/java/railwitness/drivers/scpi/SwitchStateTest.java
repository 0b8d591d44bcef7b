package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Boolean program data and NR1 responses: IEEE 488.2 and SCPI-1999 volume 1, 7.3 (from memory). */
class SwitchStateTest {
    @ParameterizedTest
    @ValueSource(strings = {"1", "+1", "ON", "on", " 1\r", "01", "1.0", "+1.000", "1.0E+00"})
    void on(String reply) {
        assertThat(SwitchState.of(reply)).contains(SwitchState.ON);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "+0", "-0", "OFF", "Off", "0\n", "00", "0.0", "+0.000E+00"})
    void off(String reply) {
        assertThat(SwitchState.of(reply)).contains(SwitchState.OFF);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "0.0002", "2", "-1", "10", "1.5", "1E1", "OFFLINE", "O N", "0,\"No error\"", "NAN", "0;0"})
    void neither(String reply) {
        assertThat(SwitchState.of(reply)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {17, 3_000_000})
    void neitherInAReplyWithoutMeasure(int digits) {
        assertThat(SwitchState.of("0".repeat(digits))).isEmpty();
    }
}
