package railwitness.logger.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** One command prints every table: whatever prints one is in its list. */
class BenchmarksTest {
    /** Processes that a test or a table starts, pictures, and the list itself. */
    private static final Set<String> NO_TABLES =
            Set.of("Benchmarks", "EveryScreen", "OtherProcess", "Screenshots", "Victim");

    @Test
    void everyProgramAmongTheTestsThatPrintsATableIsInTheList() throws IOException {
        Set<String> programs = new TreeSet<>();
        for (String room : Set.of("drivers", "safety", "analysis", "logger")) {
            Path root = Path.of("..", room, "src", "test", "java");
            try (Stream<Path> files = Files.walk(root)) {
                files.filter(file -> file.toString().endsWith(".java"))
                        .filter(BenchmarksTest::isTable)
                        .map(file -> root.relativize(file).toString())
                        .map(file -> file.substring(0, file.length() - 5)
                                .replace('/', '.')
                                .replace('\\', '.'))
                        .forEach(programs::add);
            }
        }

        assertThat(Benchmarks.TABLES.stream().map(Benchmarks.Table::main).collect(Collectors.toSet()))
                .isEqualTo(programs);
    }

    private static boolean isTable(Path file) {
        String name = file.getFileName().toString().replace(".java", "");
        try {
            return !name.endsWith("Test")
                    && !NO_TABLES.contains(name)
                    && Files.readString(file).contains("public static void main(String");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
