package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.condition.OS.WINDOWS;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;

class PortNameTest {
    @Test
    @DisabledOnOs(value = WINDOWS, disabledReason = "ports have no folder there")
    void aNameStandsForTheDeviceOfThatName() {
        assertThat(SerialPorts.device("ttyUSB0")).isEqualTo("/dev/ttyUSB0");
        assertThat(SerialPorts.device("/dev/serial/by-id/a-meter")).isEqualTo("/dev/serial/by-id/a-meter");
    }
}
