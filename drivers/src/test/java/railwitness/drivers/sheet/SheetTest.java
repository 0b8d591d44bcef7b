package railwitness.drivers.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class SheetTest {
    private record Input(double volts, int turns, LocalDate calibrated) {}

    private static Input input(SheetTable root) {
        SheetTable input = root.table("input", "the input");
        return new Input(
                input.number("nominal_V", "nominal input voltage")
                        .between(6, 60)
                        .required(),
                input.whole("turns", "turns").between(1, 1000).orElse(4),
                input.date("calibrated", "day of calibration").orElse(LocalDate.EPOCH));
    }

    private static <T> String faults(String toml, Function<SheetTable, T> reader) {
        return catchThrowableOfType(SheetException.class, () -> Sheet.of("design.toml", toml)
                        .read(reader))
                .getMessage();
    }

    @Test
    void keysAreReadWithTheirTypes() {
        Input input = Sheet.of("design.toml", "[input]\nnominal_V = 12\nturns = 5\ncalibrated = 2026-05-11\n")
                .read(SheetTest::input);
        assertThat(input).isEqualTo(new Input(12, 5, LocalDate.of(2026, 5, 11)));
    }

    @Test
    void allFaultsAreFoundAtOnceInTheOrderOfTheFile() {
        String faults =
                faults("[input]\nturns = 2.5\nnominal_V = 600\ncalibrated = \"May\"\nspeed = 1\n", SheetTest::input);
        assertThat(faults.lines())
                .containsExactly(
                        "design.toml:2: [input] turns = 2.5 must be a whole number, 1 to 1000",
                        "design.toml:3: [input] nominal_V = 600 is not allowed: must be 6 to 60 V",
                        "design.toml:4: [input] calibrated = \"May\" must be a date",
                        "design.toml:5: [input] speed is not a key that is known here; known are calibrated, nominal_V, turns");
    }

    @Test
    void missingKeyNamesItsTableAndMeaning() {
        assertThat(faults("\n[input]\nturns = 4\n", SheetTest::input))
                .isEqualTo("design.toml:2: [input] nominal_V is missing: nominal input voltage, 6 to 60 V");
    }

    @Test
    void misspeltKeyGetsTheNearestOne() {
        assertThat(faults("[input]\nnominal_V = 12\nturn = 4\n", SheetTest::input))
                .isEqualTo("design.toml:3: [input] turn is not a key that is known here; did you mean turns?");
    }

    @Test
    void unknownTableIsRefused() {
        assertThat(faults("[input]\nnominal_V = 12\n[inputs]\na = 1\n", SheetTest::input))
                .isEqualTo("design.toml:3: inputs is not a key that is known here; did you mean input?");
    }

    @Test
    void infinityIsNoNumber() {
        assertThat(faults("[input]\nnominal_V = inf\n", SheetTest::input)).contains("must be a number, 6 to 60 V");
    }

    @Test
    void brokenTomlIsNamedByLine() {
        assertThat(faults("[input]\nnominal_V = = 3\n", SheetTest::input)).startsWith("design.toml:2: is not TOML: ");
    }

    @Test
    void keyGivenTwiceIsRefused() {
        assertThat(faults("[input]\nnominal_V = 12\nnominal_V = 13\n", SheetTest::input))
                .startsWith("design.toml:3: ");
    }

    @Test
    void tablesComeInOrderWithTheirLines() {
        List<String> rails = Sheet.of("d.toml", "[[rail]]\nname = \"plus\"\n\n[[rail]]\nname = \"minus\"\n")
                .read(root -> root.tables("rail", "a rail").stream()
                        .map(rail -> rail.text("name", "name").required() + "@" + rail.line())
                        .toList());
        assertThat(rails).containsExactly("plus@1", "minus@4");
    }

    @Test
    void faultInASecondTableNamesItsOwnLine() {
        assertThat(faults(
                        "[[rail]]\nname = \"plus\"\n\n[[rail]]\nname = \"\"\n",
                        root -> root.tables("rail", "a rail").stream()
                                .map(rail -> rail.text("name", "name").required())
                                .toList()))
                .startsWith("design.toml:5: [[rail]] name = \"\" must be a text");
    }

    @Test
    void inlineAndDottedTablesAreTablesToo() {
        double pct = Sheet.of("b.toml", "accuracy.voltage = { reading_pct = 0.015 }\n")
                .read(root -> root.table("accuracy", "limits of error")
                        .table("voltage", "of voltage")
                        .number("reading_pct", "of reading")
                        .required());
        assertThat(pct).isEqualTo(0.015);
    }

    @Test
    void listsAreCheckedOneByOne() {
        assertThat(faults("loads_pct = [25, 500]\n", root -> root.numbers("loads_pct", "loads")
                        .between(0, 120)
                        .required()))
                .isEqualTo("design.toml:1: loads_pct = [25, 500] is not allowed: must be each 0 to 120 %");
    }

    @Test
    void wordOutsideTheChoiceIsRefusedWithTheChoice() {
        assertThat(faults("kind = \"metre\"\n", root -> root.text("kind", "what it is")
                        .oneOf("meter", "load")
                        .required()))
                .isEqualTo("design.toml:1: kind = \"metre\" is not allowed: must be one of meter, load");
    }

    @Test
    void keysThatContradictAreNamedAtTheirLine() {
        assertThat(faults("low_V = 3\nhigh_V = 2\n", root -> {
                    double low = root.number("low_V", "lowest").required();
                    if (low > root.number("high_V", "highest").required()) {
                        root.fault("high_V", "must be above low_V");
                    }
                    return low;
                }))
                .isEqualTo("design.toml:2: high_V must be above low_V");
    }

    @Test
    void refusedConstructionIsAFault() {
        assertThat(faults("", root -> {
                    throw new IllegalArgumentException("two rails of one name");
                }))
                .isEqualTo("design.toml:1: two rails of one name");
    }

    @Test
    void everyKeyAskedForIsNoted() {
        KeyNotes notes = new KeyNotes();
        Sheet.of("design.toml", "[input]\nnominal_V = 12\n", notes).read(SheetTest::input);
        assertThat(notes.all())
                .contains(
                        new KeyNote(
                                "[input]",
                                "nominal_V",
                                "number",
                                "V",
                                "6 to 60 V",
                                "required",
                                "nominal input voltage"),
                        new KeyNote("[input]", "turns", "whole number", "", "1 to 1000", "4", "turns"));
    }

    @Test
    void unitIsReadOffTheKey() {
        KeyNotes notes = new KeyNotes();
        Sheet.of("d.toml", "", notes).read(root -> {
            for (String key : "highest_V rail_ohm_at_least loads_pct reading_pct_per_degC interval_s duty".split(" ")) {
                root.number(key, "a number").optional();
            }
            return root;
        });
        assertThat(notes.all()).extracting(KeyNote::unit).containsExactly("V", "ohm", "%", "%/degC", "s", "");
    }

    @Test
    void missingFileIsOneLine() {
        assertThat(catchThrowableOfType(SheetException.class, () -> Sheet.of(Path.of("no-such-sheet.toml")))
                        .getMessage())
                .isEqualTo("no-such-sheet.toml:1: cannot be read; is the name right, and may you read it?");
    }

    @Test
    void tablesNotReachedAfterAFaultAreNotCalledUnknown() {
        Sheet sheet = Sheet.of("x.toml", """
                [first]
                size_V = "abc"
                sise_V = 3
                [second]
                size_V = 2
                """);
        assertThatThrownBy(() -> sheet.read(root -> {
                    double size = root.table("first", "the first")
                            .number("size_V", "its size")
                            .between(1, 60)
                            .required();
                    if (size < 2) {
                        throw new IllegalArgumentException("size");
                    }
                    return root.table("second", "the second")
                            .number("size_V", "its size")
                            .required();
                }))
                .hasMessageContaining("x.toml:2:")
                .hasMessageContaining("sise_V is not a key")
                .hasMessageNotContaining("second");
    }
}
