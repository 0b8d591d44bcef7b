package railwitness.logger.recording.store.chain;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whoever alters a file may write a digest of any length into it; the check goes on behind it. */
class HashChainTest {
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 31, 32, 33, 100_000})
    void aBrokenLinkOfAnyLengthIsGoneOnFrom(int length) {
        HashChain chain = new HashChain();
        chain.goOnFrom(new byte[length]);
        assertThat(chain.link(1)).hasSize(32);
    }
}
