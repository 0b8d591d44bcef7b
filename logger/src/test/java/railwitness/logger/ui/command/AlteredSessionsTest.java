package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form of the campaign; {@link AlteredSessions} from the command line does all of it. */
class AlteredSessionsTest {
    private static final long SEED = 20261127;

    @TempDir
    Path folder;

    @Test
    void noAlteredSessionIsBelievedBringsTheProgramDownOrHoldsItUp() throws Exception {
        try (AlteredSessions campaign = new AlteredSessions(folder, SEED)) {
            campaign.listed(6);
            campaign.mutated(24);
            assertThat(campaign.wrong()).as("seed %d", SEED).isEmpty();
        }
    }
}
