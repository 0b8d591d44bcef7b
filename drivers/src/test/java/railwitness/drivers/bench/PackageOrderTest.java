package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The packages of this module stand in one order, and each knows only those below it. */
class PackageOrderTest {
    private static final Path SOURCES = Path.of("src", "main", "java", "railwitness", "drivers");
    private static final List<String> BOTTOM_TO_TOP = List.of(
            "converter", "winding", "reading", "time", "line", "sheet", "scpi", "instrument", "bench", "rehearsal");
    private static final Pattern USE = Pattern.compile("railwitness\\.drivers\\.([a-z]+)\\.[A-Z]");

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(file -> file.toString().endsWith(".java")).toList();
        }
    }

    @Test
    void noPackageKnowsOneAboveIt() throws IOException {
        for (Path file : sources()) {
            int own = BOTTOM_TO_TOP.indexOf(SOURCES.relativize(file).getName(0).toString());
            assertThat(own).as("package of %s", file).isNotNegative();
            List<String> above = USE.matcher(Files.readString(file))
                    .results()
                    .map((MatchResult use) -> use.group(1))
                    .filter(used -> BOTTOM_TO_TOP.indexOf(used) > own)
                    .toList();
            assertThat(above).as(file.toString()).isEmpty();
        }
    }

    @Test
    void oneFileKnowsTheSerialLibrary() throws IOException {
        List<String> knowing = sources().stream()
                .filter(PackageOrderTest::importsSerialLibrary)
                .map(file -> file.getFileName().toString())
                .toList();
        assertThat(knowing).containsExactly("SerialWire.java");
    }

    private static boolean importsSerialLibrary(Path file) {
        try {
            return Files.readString(file).contains("com.fazecast");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
