package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LoggedInstrumentTest {
    private static Exchange exchange(String sent, String received) {
        return new Exchange(0, "volts", false, sent, received, "");
    }

    private static String hear(LoggedInstrument instrument, String message) {
        return instrument
                .hear(message)
                .reply()
                .map(bytes -> new String(bytes, StandardCharsets.ISO_8859_1))
                .orElse("");
    }

    @Test
    void eachQuestionGetsWhatItGotThenAndAfterThatWhatItGotLast() {
        LoggedInstrument logged = new LoggedInstrument(List.of(
                exchange("*IDN?", "me"), exchange("OUTP?", "0"), exchange("OUTP ON", ""), exchange("OUTP?", "1")));
        assertThat(hear(logged, "*IDN?")).isEqualTo("me");
        assertThat(hear(logged, "OUTP?")).isEqualTo("0");
        hear(logged, "OUTP ON");
        assertThat(hear(logged, "OUTP?")).isEqualTo("1");
        assertThat(hear(logged, "OUTP?")).isEqualTo("1");
        assertThat(logged.notInLog()).isEmpty();
    }

    @Test
    void whatTheLogDoesNotHoldIsAnsweredOtherwiseAndRemembered() {
        LoggedInstrument logged = new LoggedInstrument(
                List.of(exchange("*IDN?", "me")),
                question -> question.equals("READ?") ? Optional.of("36.5") : Optional.empty());
        assertThat(hear(logged, "READ?")).isEqualTo("36.5");
        assertThat(hear(logged, "STAT?")).isEmpty();
        assertThat(hear(logged, "VOLT 3")).isEmpty();
        assertThat(logged.notInLog()).containsExactly("STAT?");
    }

    @Test
    void asTextItIsReadBackAsItWas() {
        List<Exchange> all = List.of(
                exchange("*IDN?", "me\\you"), exchange("*RST", ""), exchange("READ?", "1\r\n2"), exchange("X?", ""));
        assertThat(ExchangeText.read("volts", ExchangeText.of(all))).isEqualTo(all);
        assertThatThrownBy(() -> ExchangeText.read("volts", "> A?\nhello\n")).hasMessageContaining("line 2 'hello'");
    }
}
