package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the campaign; {@link HostileCampaign} from the command line tries every pair. */
class HostileFilesTest {
    @TempDir
    private Path folder;

    @Test
    void everyPairIsRefusedInWordsAtOnce() throws IOException {
        try (HostileCampaign campaign = new HostileCampaign(folder)) {
            campaign.run(3);
            assertThat(campaign.wrong()).isEmpty();
            assertThat(campaign.pairs()).isGreaterThan(350);
        }
    }
}
