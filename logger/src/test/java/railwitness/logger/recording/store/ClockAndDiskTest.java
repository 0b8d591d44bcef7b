package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClockAndDiskTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Instant START = Instant.parse("2026-03-29T00:30:00Z");

    @TempDir
    Path folder;

    /** Summer time 2026 in Berlin begins on 29 March at 01:00 UTC; source: Directive 2000/84/EC, article 2 (from memory). */
    @Test
    void summerTimeIsAnEventAndNoJump() {
        WallWatch watch = new WallWatch(ZoneId.of("Europe/Berlin"), START);
        List<EventEntry> events = new ArrayList<>();
        for (int s = 1; s <= 3600; s++) {
            events.addAll(watch.look(s * SECOND, START.plusSeconds(s)).events());
        }
        assertThat(events).hasSize(1);
        assertThat(events.get(0).nanos()).isEqualTo(1800 * SECOND);
        assertThat(events.get(0).text()).contains("from UTC+01:00 to UTC+02:00");
    }

    @Test
    void aClockThatIsSetIsAnEventBothWays() {
        WallWatch watch = new WallWatch(ZoneId.of("UTC"), START);
        assertThat(watch.look(SECOND, START.plusSeconds(1)).events()).isEmpty();
        assertThat(watch.look(2 * SECOND, START.plusSeconds(62)).events().get(0).text())
                .contains("went 60.0 s ahead");
        assertThat(watch.look(3 * SECOND, START.plusSeconds(33)).events().get(0).text())
                .contains("set back by 30.0 s");
        assertThat(watch.look(4 * SECOND, START.plusSeconds(34)).events()).isEmpty();
    }

    @Test
    void aPauseOfBothClocksIsAnEvent() {
        WallWatch watch = new WallWatch(ZoneId.of("UTC"), START);
        assertThat(watch.look(90 * SECOND, START.plusSeconds(90))
                        .events()
                        .get(0)
                        .text())
                .contains("nothing was recorded for 90 s");
    }

    @Test
    void wallTimesFollowTheLastAnchor() {
        Path file = folder.resolve("clock.session");
        Instant start = Heads.plain().startedWall();
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            writer.wall(SECOND, start.plusSeconds(1));
            writer.wall(2 * SECOND, start.plusSeconds(3602));
            writer.finish(SessionState.COMPLETE);
        }
        try (SessionFile session = SessionFile.open(file)) {
            assertThat(session.events()).hasSize(1);
            assertThat(session.wallOf(SECOND)).isEqualTo(start.plusSeconds(1));
            assertThat(session.wallOf(5 * SECOND)).isEqualTo(start.plusSeconds(3605));
        }
    }

    @Test
    void aFillingDiskIsSaidHoursAheadAndOnceAtEachDistance() {
        DiskForecast forecast = new DiskForecast();
        long free = 100_000_000;
        List<String> said = IntStream.range(0, 40_000)
                .mapToObj(s -> forecast.look(s, 2_500L * s, free - 2_500L * s))
                .flatMap(java.util.Optional::stream)
                .toList();
        assertThat(said).hasSize(4);
        assertThat(said.get(0)).contains("full in about 11 h").contains("9.0 MB an hour");
        assertThat(said.get(1)).contains("4 h");
        assertThat(said.get(3)).contains("10 min");
    }

    @Test
    void aDiskWithRoomIsNotSpokenOf() {
        DiskForecast forecast = new DiskForecast();
        for (int s = 0; s < 10_000; s++) {
            assertThat(forecast.look(s, 2_500L * s, 1L << 40)).isEmpty();
        }
    }
}
