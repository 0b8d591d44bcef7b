package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of behaviours in {@code drivers/README.md}: each test that it names is there. */
class BehaviourTableTest {
    private static final Path TESTS = Path.of("src/test/java/railwitness/drivers");
    private static final Pattern NAMED = Pattern.compile("`(\\w*)(?:\\.(\\w+))?`");

    @Test
    void everyTestThatIsNamedAsProofIsThere() throws IOException {
        List<String> rows = Files.readAllLines(Path.of("README.md")).stream()
                .dropWhile(line -> !line.startsWith("| behaviour |"))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
        assertThat(rows).hasSizeGreaterThan(25);
        for (String row : rows) {
            String proof = row.split(" \\| ")[2];
            String file = "";
            for (MatchResult named : NAMED.matcher(proof).results().toList()) {
                if (named.group(1).isEmpty() || named.group(1).endsWith("Test")) {
                    file = named.group(1).isEmpty() ? file : named.group(1);
                    String text = source(file);
                    assertThat(text)
                            .as(row)
                            .contains(named.group(2) == null ? "class " + file : "void " + named.group(2));
                }
            }
            assertThat(file).as(row).isNotEmpty();
        }
    }

    private static String source(String test) throws IOException {
        try (Stream<Path> files = Files.walk(TESTS)) {
            Path found = files.filter(file -> file.endsWith(test + ".java"))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no such test: " + test));
            return Files.readString(found);
        }
    }
}
