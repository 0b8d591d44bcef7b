package railwitness.logger.recording.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;

/** The design sheet that a new unit begins with. */
class NewUnitTest {
    private final SheetDraft<Design> draft = SheetDraft.design(Sheets.newDesign());

    private SheetKeys.Field field(String table, String key) {
        return draft.fields().stream()
                .filter(field ->
                        field.note().table().equals(table) && field.note().key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void itIsInOrderAndSaysWhatMustBeFilledIn() {
        assertThat(draft.read()).isTrue();
        assertThat(field("[unit]", "name").open()).isTrue();
        assertThat(field("[transformer]", "primary_turns").open()).isTrue();
        assertThat(field("[unit]", "condition").open()).isFalse();
    }

    @Test
    void whatWasFilledInIsNoLongerOpen() {
        assertThat(draft.changed()).isFalse();
        draft.set(field("[unit]", "name"), "\"Galley amplifier supply\"");
        assertThat(draft.changed()).isTrue();
        assertThat(field("[unit]", "name").open()).isFalse();
        assertThat(draft.text()).contains("name = \"Galley amplifier supply\"\n");
        assertThat(draft.read()).isTrue();
        assertThat(draft.good().content().unit().name()).isEqualTo("Galley amplifier supply");
        assertThat(draft.saved("galley.toml").fileName()).isEqualTo("galley.toml");
        assertThat(draft.changed()).isFalse();
    }

    @Test
    void aFaultKeepsTheLastSheetThatWasInOrder() {
        draft.set(field("[input]", "nominal_V"), "\"plenty\"");
        assertThat(draft.read()).isFalse();
        assertThat(draft.faults()).hasSize(1);
        assertThat(draft.good()).isEqualTo(Sheets.newDesign());
    }
}
