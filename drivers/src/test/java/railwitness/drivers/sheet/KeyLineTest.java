package railwitness.drivers.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class KeyLineTest {
    private static final String TEXT = """
            [input]
            nominal_V = 12

            [[rail]]
            name = "plus"
            nominal_V = 22
            [[rail]]
            name = "minus"
            nominal_V = -22
            """;

    @Test
    void aKeyIsFoundInItsOwnTable() {
        assertThat(KeyLine.of(TEXT, "[input]", 0, "nominal_V")).isEqualTo(2);
        assertThat(KeyLine.of(TEXT, "[[rail]]", 0, "nominal_V")).isEqualTo(6);
        assertThat(KeyLine.of(TEXT, "[[rail]]", 1, "nominal_V")).isEqualTo(9);
    }

    @Test
    void aKeyThatIsNotThereIsAtItsTableAndATableThatIsNotThereAtTheTop() {
        assertThat(KeyLine.of(TEXT, "[[rail]]", 1, "full_load_A")).isEqualTo(7);
        assertThat(KeyLine.of(TEXT, "[input]", 0, "fuse_A")).isEqualTo(1);
        assertThat(KeyLine.of(TEXT, "[limits]", 0, "touch_V")).isEqualTo(1);
        assertThat(KeyLine.of(TEXT, "[[rail]]", 5, "name")).isEqualTo(1);
    }
}
