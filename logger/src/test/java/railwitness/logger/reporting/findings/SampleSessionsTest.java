package railwitness.logger.reporting.findings;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import railwitness.logger.recording.store.Verification;

/** The recorded stories are read for ever, and say for ever what they said when they were recorded. */
class SampleSessionsTest {
    private static Path samples() {
        Path here = Path.of("sessions-sample");
        return Files.isDirectory(here) ? here : Path.of("..").resolve(here);
    }

    private static List<Path> stories() throws Exception {
        try (Stream<Path> all = Files.walk(samples(), 2)) {
            return all.filter(file -> file.getFileName().toString().endsWith(".session"))
                    .filter(file -> !file.getParent().equals(samples()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyStoryIsThere() throws Exception {
        assertThat(stories()).hasSize(13);
    }

    @Test
    void everyStoryIsIntact() throws Exception {
        for (Path session : stories()) {
            assertThat(Verification.of(session).words()).as("%s", session).startsWith("intact");
        }
    }

    @Test
    void everyStoryFindsWhatItFound() throws Exception {
        for (Path session : stories()) {
            String name = session.getFileName().toString().replace(".session", ".findings.json");
            JsonNode then = new ObjectMapper().readTree(Files.readString(session.resolveSibling(name)));
            SessionFindings findings = SessionFindings.of(session);
            JsonNode now = new ObjectMapper().readTree(FindingsJson.of(findings));
            assertThat(now.get("verdict")).as("%s", session).isEqualTo(then.get("verdict"));
            assertThat(now.get("session").get("id"))
                    .isEqualTo(then.get("session").get("id"));
            assertThat(FindingsText.of(findings))
                    .contains(then.get("unit").get("serial").asText());
            for (JsonNode figure : then.get("figures")) {
                assertSame(session, figure, now.get("figures"));
            }
        }
    }

    /** Rules may be refined with the years; a figure that moves by more than its own uncertainty is a fault. */
    private static void assertSame(Path session, JsonNode then, JsonNode figures) {
        for (JsonNode now : figures) {
            if (now.get("name").equals(then.get("name")) && now.get("rail").equals(then.get("rail"))) {
                double apart =
                        Math.abs(now.get("value").asDouble() - then.get("value").asDouble());
                assertThat(apart)
                        .as("%s, %s", session, then.get("name"))
                        .isLessThanOrEqualTo(then.get("u").asDouble());
                return;
            }
        }
        throw new AssertionError(session + ": no " + then.get("name") + " any more");
    }
}
