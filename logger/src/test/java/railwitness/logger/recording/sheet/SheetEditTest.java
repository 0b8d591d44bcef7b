package railwitness.logger.recording.sheet;

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
        var fields = SheetKeys.of(SheetKind.DESIGN, demo);
        assertThat(fields).hasSizeGreaterThan(50);
        fields.forEach(field ->
                edit.set(field.note().table(), field.place(), field.note().key(), field.literal()));
        assertThat(edit.text()).isEqualTo(demo);
    }

    @Test
    void everyNumberOfTheDemoIsFound() {
        String demo = Sheets.demo().design().text();
        assertThat(SheetKeys.of(SheetKind.DESIGN, demo))
                .filteredOn(field -> field.note().key().equals("nominal_V"))
                .extracting(SheetKeys.Field::literal)
                .containsExactlyInAnyOrder("13.8", "36.7", "-36.7");
    }

    private static final String BENCH = """
            [bench]
            name = "wharf"

            # the old one
            [[instrument]]
            name = "plus meter"
            accuracy.voltage = { reading_pct = 0.015, stated_as = "limit" }   # data sheet

            # borrowed
            [[instrument]]
            name = "minus meter"
            """;

    private static final String VOLTAGE = "[[instrument]] accuracy.voltage";

    @Test
    void keyOfAnInnerTableIsFoundAndChangedThere() {
        SheetEdit edit = new SheetEdit(BENCH);
        assertThat(edit.literal(VOLTAGE, 0, "reading_pct")).isEqualTo("0.015");
        assertThat(edit.literal(VOLTAGE, 1, "reading_pct")).isEmpty();
        assertThat(edit.lineOf(VOLTAGE, 0, "reading_pct")).isEqualTo(7);
        assertThat(edit.set(VOLTAGE, 0, "reading_pct", "0.02").text())
                .contains("accuracy.voltage = { reading_pct = 0.02, stated_as = \"limit\" }   # data sheet");
    }

    @Test
    void keyOfAnInnerTableIsAddedAndTakenOut() {
        SheetEdit edit = new SheetEdit(BENCH);
        assertThat(edit.set(VOLTAGE, 1, "offset", "0.01").text())
                .endsWith("name = \"minus meter\"\naccuracy.voltage = { offset = 0.01 }\n");
        assertThat(edit.set(VOLTAGE, 1, "offset", "").text()).isEqualTo(BENCH);
    }

    @Test
    void tableIsTakenOutWithTheCommentAboveIt() {
        assertThat(new SheetEdit(BENCH).takeOut("[[instrument]]", 0).text()).isEqualTo("""
                        [bench]
                        name = "wharf"

                        # borrowed
                        [[instrument]]
                        name = "minus meter"
                        """);
        assertThat(new SheetEdit(BENCH).takeOut("[[instrument]]", 1).text())
                .endsWith("stated_as = \"limit\" }   # data sheet\n");
    }

    @Test
    void tableIsAddedBehindItsLikes() {
        String more = new SheetEdit(BENCH + "\n[[hand_read]]\nname = \"old one\"\n")
                .add("[[instrument]]", "name = \"supply\"\nkind = \"supply\"")
                .text();
        assertThat(more)
                .contains(
                        "name = \"minus meter\"\n\n[[instrument]]\nname = \"supply\"\nkind = \"supply\"\n\n[[hand_read]]");
        assertThat(new SheetEdit(BENCH)
                        .add("[[hand_read]]", "name = \"old one\"")
                        .text())
                .endsWith("name = \"minus meter\"\n\n[[hand_read]]\nname = \"old one\"\n");
    }

    @Test
    void addedTableTakenOutAgainLeavesTheSheetAsItWas() {
        for (String demo : java.util.List.of(
                Sheets.demo().design().text(),
                Sheets.demo().bench().text(),
                Sheets.demo().plan().text())) {
            SheetEdit edit = new SheetEdit(demo);
            String header = demo.contains("[[stage]]")
                    ? "[[stage]]"
                    : demo.contains("[bench]") ? "[[instrument]]" : "[[requirement]]";
            int before = edit.count(header);
            edit.add(header, "name = \"x\"");
            assertThat(edit.count(header)).isEqualTo(before + 1);
            assertThat(edit.takeOut(header, before).text()).isEqualTo(demo);
        }
    }

    @Test
    void tableGoesBeforeItsLikeWithItsComment() {
        assertThat(new SheetEdit(BENCH).earlier("[[instrument]]", 1).text()).isEqualTo("""
                [bench]
                name = "wharf"

                # borrowed
                [[instrument]]
                name = "minus meter"

                # the old one
                [[instrument]]
                name = "plus meter"
                accuracy.voltage = { reading_pct = 0.015, stated_as = "limit" }   # data sheet
                """);
    }

    @Test
    void firstTableCannotGoEarlier() {
        assertThat(new SheetEdit(BENCH).earlier("[[instrument]]", 0).text()).isEqualTo(BENCH);
    }

    private static final String SPREAD = """
            [[stage]]
            kind = "line-sweep"
            inputs_V = [
                11.0,   # engine off
                14.4,
            ]
            load_pct = 50
            """;

    @Test
    void listOverSeveralLinesIsReadAndReplacedAsOne() {
        SheetEdit edit = new SheetEdit(SPREAD);
        assertThat(edit.literal("[[stage]]", 0, "inputs_V")).isEqualTo("[ 11.0, 14.4, ]");
        assertThat(edit.set("[[stage]]", 0, "inputs_V", "[ 11.0, 14.4, ]").text())
                .isEqualTo(SPREAD);
        assertThat(edit.set("[[stage]]", 0, "inputs_V", "[12, 13]").text())
                .isEqualTo("[[stage]]\nkind = \"line-sweep\"\ninputs_V = [12, 13]\nload_pct = 50\n");
    }
}
