package railwitness.drivers.scpi;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FieldsTest {
    @Test
    void semicolonInQuotesDoesNotSplit() {
        assertThat(Fields.split("-222,\"Data out of range;VOLT\";1", ';'))
                .containsExactly("-222,\"Data out of range;VOLT\"", "1");
    }

    @Test
    void commaInAChannelListDoesNotSplit() {
        assertThat(Fields.split("5,DEF,(@1,2)", ',')).containsExactly("5", "DEF", "(@1,2)");
    }
}
