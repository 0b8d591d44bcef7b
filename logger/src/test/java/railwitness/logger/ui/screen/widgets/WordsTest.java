package railwitness.logger.ui.screen.widgets;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WordsTest {
    private static final Pattern KEY = Pattern.compile("Words\\s*\\.of\\(\\s*\"([a-zA-Z.]+[a-zA-Z])\"\\s*[,)]");

    @Test
    void everySentenceThatTheSourcesNameIsInTheBundle() throws IOException {
        Set<String> named = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java/railwitness/logger/ui/screen"))) {
            for (Path file :
                    files.filter(one -> one.toString().endsWith(".java")).toList()) {
                Matcher matcher = KEY.matcher(Files.readString(file));
                while (matcher.find()) {
                    named.add(matcher.group(1));
                }
            }
        }
        ResourceBundle bundle = ResourceBundle.getBundle("railwitness.logger.ui.screen.words");
        assertThat(named).hasSizeGreaterThan(30);
        assertThat(named).allMatch(bundle::containsKey);
    }
}
