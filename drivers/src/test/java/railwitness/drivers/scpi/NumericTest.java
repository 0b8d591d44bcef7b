package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Forms of numbers. Source: IEEE 488.2 (NR1, NR2, NR3) and SCPI-1999 (9.9E37, 9.91E37) as printed in public instrument
 * manuals; tolerant spellings are our own.
 */
class NumericTest {
    @ParameterizedTest
    @CsvSource({
        "273, 273",
        "0.273, 0.273",
        "2.73E+2, 273",
        "0, 0",
        "2, 2",
        "30, 30",
        "-5, -5",
        "0.6, 0.6",
        "-2.6, -2.6",
        "3.1415E-7, 3.1415E-7",
        "-8.2E3, -8200",
        "+2.73E+02, 273"
    })
    void formsOfTheStandardAreRead(String text, double value) {
        assertThat(Numeric.of(text)).isEqualTo(new Numeric.Value(value));
    }

    @ParameterizedTest
    @CsvSource({"' 12.5 ', 12.5", "+.5, 0.5", "7., 7", "1.2 E+3, 1200", "12.5V, 12.5", "12.5 A, 12.5", "1e1, 10"})
    void tolerantSpellingsAreRead(String text, double value) {
        assertThat(Numeric.of(text)).isEqualTo(new Numeric.Value(value));
    }

    @ParameterizedTest
    @ValueSource(strings = {"9.91E37", "+9.91000000E+37", "9.91E+37", "99.1E36", "9.90999985E+37", "NAN", "nan"})
    void notANumberIsToldBeforeInfinity(String text) {
        assertThat(Numeric.of(text)).isEqualTo(new Numeric.Nothing());
    }

    @ParameterizedTest
    @ValueSource(strings = {"9.9E37", "+9.90000000E+37", "9.9E+37", "9.90000007E+37", "INF", "1E38"})
    void infinityIsAnOverload(String text) {
        assertThat(Numeric.of(text)).isEqualTo(new Numeric.Infinite(false));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-9.9E37", "-9.90000000E+37", "NINF"})
    void negativeInfinityKeepsItsSign(String text) {
        assertThat(Numeric.of(text)).isEqualTo(new Numeric.Infinite(true));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1,5", "0x1p3", "1.2.3", "--1", "12.5mV", "1.5f", "ON", "1 2", "E5", "."})
    void otherTextIsNoNumber(String text) {
        assertThatThrownBy(() -> Numeric.of(text)).hasMessage("'" + text + "' is not a number");
    }

    @ParameterizedTest
    @CsvSource({"13.8, 13.8", "0.0001, 0.0001", "1E-9, 1E-9", "100, 100", "-0.5, -0.5", "0, 0", "20.000000000001, 20"})
    void numbersAreWrittenShort(double value, String text) {
        assertThat(Numeric.write(value)).isEqualTo(text);
    }
}
