package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Entries of the error queue. Source: SCPI-1999 error numbers and texts as printed in public instrument manuals. */
class ErrorEntryTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            -100,"Command error" | -100 | Command error
            -113,"Undefined header" | -113 | Undefined header
            -222,"Data out of range" | -222 | Data out of range
            -350,"Queue overflow" | -350 | Queue overflow
            -363,"Input buffer overrun" | -363 | Input buffer overrun
            -410,"Query INTERRUPTED" | -410 | Query INTERRUPTED
            -420,"Query UNTERMINATED" | -420 | Query UNTERMINATED
            +0,"No error" | 0 | No error
            """)
    void numberAndTextAreRead(String reply, int number, String text) {
        assertThat(ErrorEntry.of(reply)).isEqualTo(new ErrorEntry(number, text, ""));
    }

    @Test
    void semicolonInsideTheQuotesBeginsTheDetail() {
        assertThat(ErrorEntry.of("-222,\"Data out of range;VOLT 99;OUTP ON\""))
                .isEqualTo(new ErrorEntry(-222, "Data out of range", "VOLT 99;OUTP ON"));
    }

    @Test
    void doubledQuotesAreOne() {
        ErrorEntry entry = ErrorEntry.of("-151,\"Invalid string data;\"\"VOLT:DX\"\"\"");
        assertThat(entry.detail()).isEqualTo("\"VOLT:DX\"");
        assertThat(ErrorEntry.of(entry.reply())).isEqualTo(entry);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "+0", "0,\"No error\"", "0,No error", " 0 , \"No error\" "})
    void everySpellingOfNoErrorEndsTheQueue(String reply) {
        assertThat(ErrorEntry.of(reply).isNone()).isTrue();
    }

    @Test
    void otherRepliesAreNoEntry() {
        assertThatThrownBy(() -> ErrorEntry.of("12.5")).hasMessageContaining("no entry of an error queue");
    }
}
