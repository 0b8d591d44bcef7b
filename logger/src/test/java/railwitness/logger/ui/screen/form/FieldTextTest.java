package railwitness.logger.ui.screen.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import railwitness.drivers.sheet.KeyNote;
import railwitness.logger.recording.sheet.SheetKeys;

/** Values as they stand in a sheet and as people write them. */
class FieldTextTest {
    private final Locale before = Locale.getDefault(Locale.Category.FORMAT);

    @AfterEach
    void back() {
        Locale.setDefault(Locale.Category.FORMAT, before);
    }

    private static SheetKeys.Field field(String type, String literal) {
        return new SheetKeys.Field(new KeyNote("[table]", "key", type, "", "", "optional", "a key"), 0, literal, false);
    }

    private static String there(String type, String literal) {
        return FieldText.shown(field(type, literal));
    }

    private static String back(String type, String typed) {
        return FieldText.literal(field(type, ""), typed);
    }

    @Test
    void textsLoseTheirQuotesAndGetThemBack() {
        assertThat(there("text", "\"the \\\"old\\\" one\"")).isEqualTo("the \"old\" one");
        assertThat(back("text", "the \"old\" one")).isEqualTo("\"the \\\"old\\\" one\"");
        assertThat(there("text", "'C:\\ports'")).isEqualTo("C:\\ports");
        assertThat(back("text", "C:\\ports")).isEqualTo("\"C:\\\\ports\"");
    }

    @Test
    void listsLoseTheirBracketsAndGetThemBack() {
        assertThat(there("texts", "[\"fan off\", \"amplifier, disconnected\"]"))
                .isEqualTo("fan off; amplifier, disconnected");
        assertThat(back("texts", "fan off; amplifier, disconnected"))
                .isEqualTo("[\"fan off\", \"amplifier, disconnected\"]");
        assertThat(back("texts", "plus.voltage")).isEqualTo("\"plus.voltage\"");
    }

    @Test
    void numbersAreThoseOfThePersonsLocale() {
        Locale.setDefault(Locale.Category.FORMAT, Locale.GERMANY);
        assertThat(there("numbers", "[10.5, 11]")).isEqualTo("10,5; 11");
        assertThat(back("numbers", "10,5; 11")).isEqualTo("[10.5, 11]");
        assertThat(back("number", "13,8")).isEqualTo("13.8");
        Locale.setDefault(Locale.Category.FORMAT, Locale.UK);
        assertThat(there("numbers", "[10.5, 11]")).isEqualTo("10.5, 11");
        assertThat(back("numbers", "10.5, 11")).isEqualTo("[10.5, 11]");
        assertThat(back("numbers", "10.5; 11")).isEqualTo("[10.5, 11]");
    }

    /** Whatever is typed stays a sheet that can be parsed, so that its reader names the key. */
    @Test
    void whatMakesNoSenseBecomesAText() {
        assertThat(back("number", "about ten")).isEqualTo("\"about ten\"");
        assertThat(back("numbers", "10, x")).isEqualTo("[10, \"x\"]");
        assertThat(back("date", "next week")).isEqualTo("\"next week\"");
        assertThat(back("date", "2026-05-11")).isEqualTo("2026-05-11");
        assertThat(back("true or false", "perhaps")).isEqualTo("\"perhaps\"");
        assertThat(back("number", "  ")).isEmpty();
    }

    /** Signs that part items or lines, inside of them, come back as they were. */
    @Test
    void whatIsShownComesBackAsTheSameTexts() {
        for (String literal : java.util.List.of(
                "[\"a; b\", \"c\"]",
                "[\"say \\\"on\\\"\", \"\\\"x\\\"\"]",
                "[\"line\\nend\", ' blank ']",
                "[\"\\u00b5F\", \"a # b\", \"a, b\"]",
                "[\"\\\"\", \"x\"]",
                "[\"\", \"x\"]")) {
            String again = back("texts", there("texts", literal));
            assertThat(railwitness.drivers.sheet.TomlLexer.texts(again))
                    .as(literal)
                    .isEqualTo(railwitness.drivers.sheet.TomlLexer.texts(literal));
        }
        String spread = "\"\"\"one\ntwo\"\"\"";
        assertThat(railwitness.drivers.sheet.TomlLexer.texts(back("text", there("text", spread))))
                .containsExactly("one\ntwo");
    }
}
