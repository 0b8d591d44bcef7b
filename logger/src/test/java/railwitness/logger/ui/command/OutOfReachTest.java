package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A step that bench or unit cannot reach is said to be so and gives no figure; the rest of the plan is done. */
class OutOfReachTest {
    @TempDir
    Path folder;

    private Found rehearsed(String was, String is) throws IOException {
        Path bench = folder.resolve("bench.toml");
        String text = Files.readString(Path.of("../sessions-sample/demo/bench.toml"));
        assertThat(text).contains(was);
        Files.writeString(bench, text.replace(was, is));
        Path session = folder.resolve("reach.session");
        Said.by("rehearse", "--bench", bench.toString(), "--out", session.toString());
        return Found.in(session);
    }

    @Test
    void aSupplyTooSmallForFullLoadLeavesFullLoadOut() throws IOException {
        Found found = rehearsed("highest_A = 40", "highest_A = 20");

        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.json().get("events").toString()).contains("not reached", "the limit is 20.0 A");
        assertThat(found.find("full-load efficiency", null)).isEmpty();
        assertThat(found.point("load-sweep", "75 %").get("settled").asBoolean()).isTrue();
        assertThat(found.verdict()).isEqualTo("not judged");
    }

    @Test
    void aLoadTooSmallForItsRailLeavesTheStepsOut() throws IOException {
        Found found = rehearsed("rail = \"plus\"\n", "rail = \"plus\"\nhighest_A = 3.5\n");

        assertThat(found.state()).isEqualTo("complete");
        assertThat(found.json().get("events").toString()).contains("the load takes 3.50 A");
        assertThat(found.find("rail voltage", "plus")).isEmpty();
    }

    @Test
    void theInputAtWhichTheUnitGivesUpIsFoundWhenAskedFor() throws IOException {
        Path plan = Files.writeString(folder.resolve("plan.toml"), """
                [plan]
                settle_at_most_s = 6
                average_s = 2
                [[stage]]
                kind = "no-load"
                [[stage]]
                kind = "line-sweep"
                inputs_V = [14.4, 12.5, 11]
                drop_out_step_V = 0.2
                [[stage]]
                kind = "load-sweep"
                loads_pct = [25]
                """);
        Path session = folder.resolve("dropout.session");
        Said said = Said.by("rehearse", "--plan", plan.toString(), "--out", session.toString());

        Found found = Found.in(session);
        assertThat(found.state()).as(said.err()).isEqualTo("complete");
        assertThat(found.figure("drop-out voltage", null)).isBetween(8.0, 9.0);
        assertThat(found.point("load-sweep", "25 % again")
                        .at("/rails/plus/voltage/value")
                        .asDouble())
                .isGreaterThan(35);
    }
}
