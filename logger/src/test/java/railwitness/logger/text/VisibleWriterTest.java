package railwitness.logger.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Nothing that is written to a person acts on the terminal, however it is cut into pieces. */
class VisibleWriterTest {
    private static final long SEED = 20_261_127;

    private static String written(String text) {
        StringWriter out = new StringWriter();
        PrintWriter visible = new PrintWriter(new VisibleWriter(out), true);
        visible.print(text);
        visible.flush();
        return out.toString();
    }

    @Test
    void whatWouldActIsShownAsItsNumber() {
        assertThat(written("a\u001b[2Jb\u202ec\u0007\u009b\u2066d\u200be\u2028f\ufeff"))
                .isEqualTo("a[U+001B][2Jb[U+202E]c[U+0007][U+009B][U+2066]d[U+200B]e[U+2028]f[U+FEFF]");
    }

    @Test
    void linesTabsAndLettersOfAnyLanguageStay() {
        String plain = "13.8 V\t\u00b5F \u00fcber \u0416 \u6f22 \ud83d\udd0b\r\nnext\n";
        assertThat(written(plain)).isEqualTo(plain);
    }

    @Test
    void halfACharacterIsShown() {
        assertThat(written("a\ud83db")).isEqualTo("a[U+D83D]\ufffdb").doesNotContain("\ud83d");
    }

    @Test
    void whereAWriteEndsMakesNoDifference() throws IOException {
        Random random = new Random(SEED);
        int[] signs = {'a', '\n', 0x1B, 0x202E, 0x1F50B, 0xE0041, 0xD83D, 0x9B, 0x6F22};
        for (int k = 0; k < 200; k++) {
            StringBuilder text = new StringBuilder();
            random.ints(30, 0, signs.length).forEach(at -> text.appendCodePoint(signs[at]));
            text.append('.');
            StringWriter pieces = new StringWriter();
            VisibleWriter visible = new VisibleWriter(pieces);
            for (int from = 0; from < text.length(); ) {
                int to = Math.min(text.length(), from + 1 + random.nextInt(4));
                visible.write(text.toString().toCharArray(), from, to - from);
                from = to;
            }
            assertThat(pieces.toString()).as("seed %d, %d", SEED, k).isEqualTo(written(text.toString()));
            assertThat(pieces.toString().codePoints())
                    .as("seed %d, %d", SEED, k)
                    .noneMatch(codePoint -> codePoint != '\n' && VisibleText.acts(codePoint));
        }
    }
}
