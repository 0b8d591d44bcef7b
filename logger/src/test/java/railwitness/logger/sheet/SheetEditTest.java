package railwitness.logger.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SheetEditTest {
    private static final String TEXT = """
            # the unit of boat seven
            [input]
            nominal_V = 13.8        # with the engine running
            lowest_V = 10.5

            [[rail]]
            name = "plus"   # upper
            nominal_V = 36.7

            [[rail]]
            name = "minus"
            nominal_V = -36.7
            """;

    @Test
    void commentBehindAChangedValueStays() {
        assertThat(new SheetEdit(TEXT).set("[input]", 0, "nominal_V", "12.6").text())
                .contains("nominal_V = 12.6        # with the engine running")
                .contains("# the unit of boat seven");
    }

    @Test
    void keyOfTheSecondTableIsChangedThere() {
        String changed =
                new SheetEdit(TEXT).set("[[rail]]", 1, "nominal_V", "-40").text();
        assertThat(changed).contains("nominal_V = 36.7").endsWith("name = \"minus\"\nnominal_V = -40\n");
    }

    @Test
    void missingKeyComesAtTheEndOfItsTable() {
        assertThat(new SheetEdit(TEXT).set("[input]", 0, "fuse_A", "40").text())
                .contains("lowest_V = 10.5\nfuse_A = 40\n\n[[rail]]");
    }

    @Test
    void missingTableIsAddedAtTheEnd() {
        assertThat(new SheetEdit(TEXT).set("[filter]", 0, "choke_uH", "1.5").text())
                .endsWith("\n[filter]\nchoke_uH = 1.5\n");
    }

    @Test
    void emptiedKeyIsTakenOut() {
        assertThat(new SheetEdit(TEXT).set("[input]", 0, "lowest_V", "").text()).doesNotContain("lowest_V");
    }

    @Test
    void everyFieldOfTheDemoSetToItselfLeavesTheSheetAsItWas() {
        String demo = Sheets.demo().design().text();
        SheetEdit edit = new SheetEdit(demo);
        var fields = DesignKeys.of(demo);
        assertThat(fields).hasSizeGreaterThan(50);
        fields.forEach(field ->
                edit.set(field.note().table(), field.place(), field.note().key(), field.literal()));
        assertThat(edit.text()).isEqualTo(demo);
    }

    @Test
    void everyNumberOfTheDemoIsFound() {
        String demo = Sheets.demo().design().text();
        assertThat(DesignKeys.of(demo))
                .filteredOn(field -> field.note().key().equals("nominal_V"))
                .extracting(DesignKeys.Field::literal)
                .containsExactlyInAnyOrder("13.8", "36.7", "-36.7");
    }
}
