package railwitness.logger.ui.screen.widgets;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The second language says everything that the first one says, and no sentence stands anywhere but in the two. */
class LanguagesTest {
    private static final Pattern PLACE = Pattern.compile("\\{\\d}");
    private static final Path CODE = Path.of("src/main/java/railwitness/logger/ui/screen");
    /** Where something is said to the person. */
    private static final Pattern SAID = Pattern.compile(
            "(?:Label\\.(?:of|muted)|Note\\.(?:of|muted)|new Note|new Label|StatusLine\\.of|setText|setToolTipText|message"
                    + "|setAccessibleName|setAccessibleDescription|new JButton|new JRadioButton|new JCheckBox"
                    + "|Question\\.Answer|Cell\\.(?:ink|of)|Column\\.(?:words|numbers)|drawString)\\(\\s*\"([^\"]*)\"");
    /** Two words in a row make a sentence; one alone may be the name of a thing. */
    private static final Pattern SENTENCE = Pattern.compile("\"[A-Z][a-z]+ [a-z]+[^\"]*\"");

    private static Properties bundle(String name) throws IOException {
        Properties all = new Properties();
        try (Reader in = new InputStreamReader(
                LanguagesTest.class.getResourceAsStream("/railwitness/logger/ui/screen/" + name),
                StandardCharsets.UTF_8)) {
            all.load(in);
        }
        return all;
    }

    private static SortedSet<String> places(String text) {
        SortedSet<String> places = new TreeSet<>();
        Matcher matcher = PLACE.matcher(text);
        while (matcher.find()) {
            places.add(matcher.group());
        }
        return places;
    }

    @Test
    void germanSaysEverythingWithTheSamePlacesForValues() throws IOException {
        Properties english = bundle("words.properties");
        Properties german = bundle("words_de.properties");
        assertThat(german.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
        for (String key : english.stringPropertyNames()) {
            assertThat(places(german.getProperty(key))).as(key).isEqualTo(places(english.getProperty(key)));
            assertThat(german.getProperty(key).isBlank())
                    .as(key)
                    .isEqualTo(english.getProperty(key).isBlank());
        }
    }

    @Test
    void mostSentencesAreReallyInAnotherLanguage() throws IOException {
        Properties english = bundle("words.properties");
        Properties german = bundle("words_de.properties");
        long same = english.stringPropertyNames().stream()
                .filter(key -> english.getProperty(key).matches(".*[a-z]{4,} [a-z]{3,}.*"))
                .filter(key -> english.getProperty(key).equals(german.getProperty(key)))
                .count();
        assertThat(same).isZero();
    }

    @Test
    void noSentenceStandsInCode() throws IOException {
        List<String> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(CODE)) {
            for (Path file :
                    files.filter(one -> one.toString().endsWith(".java")).toList()) {
                String code =
                        Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?m)//.*$", "");
                Matcher said = SAID.matcher(code);
                while (said.find()) {
                    if (said.group(1).matches(".*[A-Za-z]{3,}.*")) {
                        found.add(file.getFileName() + ": " + said.group());
                    }
                }
                Matcher sentence = SENTENCE.matcher(code);
                while (sentence.find()) {
                    found.add(file.getFileName() + ": " + sentence.group());
                }
            }
        }
        assertThat(found).isEmpty();
    }
}
