package railwitness.drivers.line;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LastingLineTest {
    /** What a line can do and is not handed on would be lost without a word: replies fell out of step so. */
    @Test
    void everythingALineCanDoIsHandedOn() {
        List<String> own = Arrays.stream(LastingLine.class.getDeclaredMethods())
                .map(Method::getName)
                .toList();
        assertThat(Line.class.getMethods()).extracting(Method::getName).allMatch(own::contains);
    }
}
