package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Long and short forms. Source: SCPI-1999 rules as printed in public instrument manuals. */
class HeaderTest {
    private final Header voltage = Header.of("MEASure[:SCALar]:VOLTage[:DC]?");

    @ParameterizedTest
    @ValueSource(
            strings = {
                "MEAS:VOLT?",
                "MEASURE:VOLTAGE:DC?",
                "meas:volt:dc?",
                ":MEAS:SCAL:VOLT?",
                "MEASure:SCALar:VOLT:DC?"
            })
    void bothFormsAndOptionalNodesAreAccepted(String header) {
        assertThat(voltage.matches(header)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"MEASU:VOLT?", "MEA:VOLT?", "MEAS:VOLTA?", "MEAS:VOLT", "MEAS:VOLT:AC?", "VOLT?", "MEAS?"})
    void nothingInBetweenIsAccepted(String header) {
        assertThat(voltage.matches(header)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"IMMediate, IMM", "FORMat, FORM", "VOLTage, VOLT", "DC, DC", "FREQuency, FREQ", "TIME, TIME"})
    void shortFormFollowsTheRule(String mnemonic, String brief) {
        assertThat(Header.shortForm(mnemonic)).isEqualTo(brief);
    }

    @Test
    void numberAtTheEndOfAMnemonicIsOneWhenLeftOut() {
        Header header = Header.of("STATus:QUEStionable:INSTrument:ISUMmary#[:CONDition]?");
        assertThat(header.numbers("STAT:QUES:INST:ISUM2:COND?")).contains(List.of(2));
        assertThat(header.numbers("STAT:QUES:INST:ISUM?")).contains(List.of(1));
        assertThat(header.numbers("STAT:QUES:INST?")).isEmpty();
    }

    @Test
    void optionalFirstNodeNeedsNoColon() {
        Header header = Header.of("[SOURce:]VOLTage[:LEVel]");
        assertThat(header.matches("VOLT")).isTrue();
        assertThat(header.matches("SOUR:VOLT:LEV")).isTrue();
    }

    @Test
    void commonCommandsMatchThemselves() {
        assertThat(Header.of("*IDN?").matches("*idn?")).isTrue();
        assertThat(Header.of("*RST").matches("*RST?")).isFalse();
    }

    @Test
    void whatIsNoHeaderIsRefused() {
        assertThatThrownBy(() -> Header.of("volt ?")).hasMessageContaining("not written as a header");
    }
}
