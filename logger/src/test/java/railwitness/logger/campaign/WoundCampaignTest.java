package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import railwitness.drivers.winding.WoundFault;

/** A few cases of {@link WoundCampaign}, each a whole rehearsal. */
class WoundCampaignTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource(WoundFault.class)
    void aFaultIsNamedRightly(WoundFault fault) throws IOException {
        assertThat(WoundCampaign.right(fault, 2, 100, folder))
                .as("seeds from 100")
                .isEqualTo(100);
    }

    @Test
    void noSoundTransformerIsAccused() throws IOException {
        assertThat(WoundCampaign.accused(3, 100, folder)).as("seeds from 100").isZero();
    }
}
