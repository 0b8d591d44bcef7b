package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;

/** What is known in passing of a session whose file is long, here by empty pages, as a forger may make it. */
@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class LongChainTest {
    private static final long SECOND = 1_000_000_000L;

    @TempDir
    Path folder;

    private Path session;

    @BeforeEach
    void record() throws Exception {
        session = folder.resolve("long.session");
        SessionHead head = new SessionHead(
                "0412", Instant.parse("2026-03-04T05:06:07Z"), ZoneOffset.UTC, true, "test", "", "Heron", "1", "");
        try (SessionWriter writer = SessionWriter.create(session, head)) {
            writer.sheet("design", "design.toml", "name = \"Heron\"\n");
            for (int second = 1; second <= 100; second++) {
                writer.reading(new Measured(Channel.of("plus.voltage"), 36, second * SECOND, second * SECOND + 1));
            }
            writer.finish(SessionState.COMPLETE);
        }
        sql("CREATE TABLE padding (bytes)", "INSERT INTO padding VALUES (zeroblob(21000000))", "DROP TABLE padding");
        assertThat(session.toFile().length()).isGreaterThan(20_000_000);
    }

    private void sql(String... commands) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + session);
                Statement statement = connection.createStatement()) {
            for (String command : commands) {
                statement.executeUpdate(command);
            }
        }
    }

    @Test
    void whatWasNotWorkedOutToItsEndIsSaid() {
        ChainState glance = ChainState.of(session, false);
        assertThat(glance.kind()).isEqualTo(ChainState.Kind.NOT_WORKED_OUT);
        assertThat(glance.words()).contains("not to its end", "not known whether it is as it was recorded");
        assertThat(ChainState.of(session, true).kind()).isEqualTo(ChainState.Kind.INTACT);
    }

    /** The head and the sheets stand at the beginning, so a rehearsal is not passed off as real behind empty pages. */
    @Test
    void anAlteredHeadOrSheetIsFoundAllTheSame() throws Exception {
        sql("UPDATE session SET rehearsal = 0");
        assertThat(ChainState.of(session, false).isBroken()).isTrue();
        sql("UPDATE session SET rehearsal = 1", "UPDATE sheet SET text = 'name = \"Egret\"'");
        assertThat(ChainState.of(session, false).words()).startsWith("broken chain: the session is not intact");
    }
}
