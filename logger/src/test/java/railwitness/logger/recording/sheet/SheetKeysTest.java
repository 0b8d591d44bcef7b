package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The keys of the demo's sheets as a form asks for them. */
class SheetKeysTest {
    private static List<SheetKeys.Field> bench(int instrument) {
        return SheetKeys.of(SheetKind.BENCH, Sheets.demo().bench().text()).stream()
                .filter(field -> field.header().equals("[[instrument]]") && field.place() == instrument)
                .toList();
    }

    private static SheetKeys.Field field(List<SheetKeys.Field> fields, String table, String key) {
        return fields.stream()
                .filter(field ->
                        field.note().table().equals(table) && field.note().key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void supplyIsAskedForItsHighestCurrentAndAMeterForItsShunt() {
        assertThat(bench(0)).extracting(field -> field.note().key()).contains("highest_A", "drives_remote");
        assertThat(bench(2))
                .extracting(field -> field.note().key())
                .contains("shunt_ohm", "reads")
                .doesNotContain("highest_A");
        assertThat(field(bench(2), "[[instrument]]", "shunt_ohm").literal()).isEqualTo("0.001");
    }

    @Test
    void accuracyIsFoundInItsInnerTable() {
        assertThat(field(bench(1), "[[instrument]] accuracy.voltage", "reading_pct")
                        .literal())
                .isEqualTo("0.015");
    }

    @Test
    void whatMayOnlyBeOneOfSomeWordsIsAChoice() {
        assertThat(field(bench(0), "[[instrument]]", "kind").choices())
                .containsExactly("supply", "meter", "load", "scope");
        assertThat(field(bench(0), "[[instrument]]", "drives_remote").choices()).containsExactly("true", "false");
        assertThat(field(bench(0), "[[instrument]]", "port").choices()).isEmpty();
    }

    @Test
    void stageOfAPlanIsAskedForWhatItsKindNeeds() {
        List<SheetKeys.Field> plan =
                SheetKeys.of(SheetKind.PLAN, Sheets.demo().plan().text());
        assertThat(plan.stream().filter(field -> field.place() == 3))
                .extracting(field -> field.note().key())
                .contains("loads_pct")
                .doesNotContain("inputs_V");
        assertThat(plan.stream().filter(field -> field.place() == 4))
                .extracting(field -> field.note().key())
                .contains("inputs_V")
                .doesNotContain("loads_pct");
    }

    @Test
    void requirementsOfADesignAreKeysToo() {
        assertThat(SheetKeys.of(SheetKind.DESIGN, Sheets.demo().design().text()))
                .filteredOn(field -> field.note().key().equals("figure"))
                .hasSize(8)
                .allMatch(field -> field.choices().contains("average efficiency"));
    }

    @Test
    void everyFieldSetToItselfLeavesEachSheetAsItWas() {
        for (SheetDraft<?> draft : List.of(
                SheetDraft.design(Sheets.demo().design()),
                SheetDraft.bench(Sheets.demo().bench()),
                SheetDraft.plan(Sheets.demo().plan()))) {
            String before = draft.text();
            draft.fields().forEach(field -> draft.set(field, field.literal()));
            assertThat(draft.text()).isEqualTo(before);
            assertThat(draft.read()).isTrue();
        }
    }
}
