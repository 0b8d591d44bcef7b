package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Forms as the Unicode Standard's chart of Arabic Presentation Forms-B gives them. */
class ArabicFormsTest {
    @Test
    void lettersTakeTheFormTheirNeighboursAskFor() {
        // qaf, alef, reh, beh: initial, final, isolated, isolated
        assertThat(ArabicForms.of("\u0642\u0627\u0631\u0628")).isEqualTo("\ufed7\ufe8e\ufead\ufe8f");
        // seen, lam, alef, meem: initial, lam with alef in the final form, isolated
        assertThat(ArabicForms.of("\u0633\u0644\u0627\u0645")).isEqualTo("\ufeb3\ufefc\ufee1");
    }

    @Test
    void otherScriptsStayAsTheyAre() {
        assertThat(ArabicForms.of("36.9 V \u00b1 0.1, \u4e2d \u05d0")).isEqualTo("36.9 V \u00b1 0.1, \u4e2d \u05d0");
    }

    @Test
    void aLineIsTurnedForDrawingWithItsNumbersLeftAsTheyAre() {
        assertThat(ReadingOrder.drawn("No. \u05d0\u05d1 12")).isEqualTo("No. 12 \u05d1\u05d0");
        assertThat(ReadingOrder.drawn("plain (text)")).isEqualTo("plain (text)");
    }
}
