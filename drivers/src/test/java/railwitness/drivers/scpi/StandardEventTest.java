package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static railwitness.drivers.scpi.StandardEvent.*;

import org.junit.jupiter.api.Test;

/** Source: IEEE 488.2 standard event status register as printed in public instrument manuals. */
class StandardEventTest {
    @Test
    void registerOf60HoldsTheFourErrors() {
        assertThat(StandardEvent.in(60))
                .containsExactlyInAnyOrder(COMMAND_ERROR, EXECUTION_ERROR, DEVICE_ERROR, QUERY_ERROR);
    }

    @Test
    void powerOnWeighs128() {
        assertThat(POWER_ON.weight()).isEqualTo(128);
        assertThat(OPERATION_COMPLETE.weight()).isEqualTo(1);
    }
}
