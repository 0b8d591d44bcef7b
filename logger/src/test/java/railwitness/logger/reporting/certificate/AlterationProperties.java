package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of {@link AlterationCampaign}. */
class AlterationProperties {
    private static final long SEED = 20260328;

    @TempDir
    Path folder;

    @Test
    void anyAlteredCellIsFound() throws Exception {
        AlterationCampaign campaign = new AlterationCampaign(folder, SEED);
        campaign.run(150);
        assertThat(campaign.unseen()).as("seed " + SEED).isEmpty();
        assertThat(campaign.byTable()).hasSizeGreaterThan(10);
    }
}
