package railwitness.logger.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers as people write them. Letters in the place of the point: IEC 60062; prefixes: SI brochure, table 7. */
class TypedNumberTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.6      | V    | 12.6     | 0.1",
                "12.60     | V    | 12.6     | 0.01",
                "10,5      | A    | 10.5     | 0.1",
                "-38.2 V   | V    | -38.2    | 0.1",
                "−38,2V    | V    | -38.2    | 0.1",
                "350 mA    | A    | 0.35     | 0.001",
                "350m      | A    | 0.35     | 0.001",
                "250k      | ohm  | 250000   | 1000",
                "250 kΩ    | ohm  | 250000   | 1000",
                "2k2       | ohm  | 2200     | 100",
                "0R1       | ohm  | 0.1      | 0.1",
                "4R70      | ohm  | 4.7      | 0.01",
                "4u7       | F    | 4.7e-6   | 1e-7",
                "4µ7F      | F    | 4.7e-6   | 1e-7",
                "1M0       | ohm  | 1e6      | 1e5",
                "22 R      | ohm  | 22       | 1",
                "8 Ohm     | ohm  | 8        | 1",
                "60        | degC | 60       | 1",
                "60.5 °C   | degC | 60.5     | 0.1",
                "60 C      | degC | 60       | 1",
                ".5        | V    | 0.5      | 0.1",
                "5.        | V    | 5        | 1",
                "1.5e3     | Hz   | 1500     | 100",
                "25 kHz    | Hz   | 25000    | 1000",
                "20        | ''   | 20       | 1",
            })
    void whatPeopleWriteIsUnderstood(String typed, String unit, double value, double resolution) {
        TypedNumber number = TypedNumber.of(typed, unit).orElseThrow();
        assertThat(number.value()).isCloseTo(value, offset(Math.abs(value) * 1e-12));
        assertThat(number.resolution()).isCloseTo(resolution, offset(resolution * 1e-12));
    }

    @Test
    void whatIsNoNumberOfThisUnitIsNone() {
        for (String typed : List.of(
                "",
                " ",
                "-",
                "V",
                "12.3.4",
                "1,234.5",
                "1.234,5",
                "1 2",
                "12 A",
                "12 mA",
                "NaN",
                "Infinity",
                "1e400x",
                "0x10",
                "2k2k",
                "12,",
                "1e999",
                "9".repeat(50))) {
            boolean trailing = typed.equals("12,");
            assertThat(TypedNumber.of(typed, "V").isPresent()).as(typed).isEqualTo(trailing);
        }
        assertThat(TypedNumber.of("4R7", "V")).isEmpty();
        assertThat(TypedNumber.of("5 V", "A")).isEmpty();
    }

    @Test
    void whatJavaPrintsIsReadBackTheSame() {
        long seed = 20261127;
        Random random = new Random(seed);
        for (int i = 0; i < 10_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 6);
            assertThat(TypedNumber.of(Double.toString(value), "V").orElseThrow().value())
                    .as("seed %d", seed)
                    .isEqualTo(value);
        }
    }
}
