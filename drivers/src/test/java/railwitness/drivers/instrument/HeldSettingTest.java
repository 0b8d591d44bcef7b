package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A setting that reads back otherwise than it did when it was set, twice, was changed. */
class HeldSettingTest {
    private final HeldSetting held = new HeldSetting("current limit", "A", 0.1);

    @Test
    void whatReadsBackAsItDidIsHeld() {
        held.readBack(5.0);
        assertThat(held.now(5.08)).isEmpty();
        assertThat(held.doubted()).isFalse();
    }

    @Test
    void oneOtherReadBackIsADoubtAndTwoAreCertain() {
        held.readBack(5.0);
        assertThat(held.now(30)).isEmpty();
        assertThat(held.doubted()).isTrue();
        assertThat(held.now(30)).hasValueSatisfying(words -> assertThat(words)
                .contains("its current limit was set to 5.000 A and reads back 30.00 A now"));
    }

    @Test
    void aDoubtThatPassesIsOver() {
        held.readBack(5.0);
        held.now(30);
        assertThat(held.now(5.0)).isEmpty();
        assertThat(held.doubted()).isFalse();
        assertThat(held.now(30)).isEmpty();
    }

    @Test
    void whatIsSetAnewIsHeldAgainstItsOwnReadBack() {
        held.readBack(5.0);
        held.forget();
        assertThat(held.isHeld()).isFalse();
        held.readBack(30);
        assertThat(held.now(30)).isEmpty();
        assertThat(held.doubted()).isFalse();
    }
}
