package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The fuzzing of replies in short; all of it is {@link ReplyFuzz#main}. */
class ReplyFuzzTest {
    @Test
    void noReplyIsTakenForWhatItIsNotOrRefusedWithoutWords() {
        assertThat(ReplyFuzz.run(50_000, 20261128)).isEmpty();
    }
}
