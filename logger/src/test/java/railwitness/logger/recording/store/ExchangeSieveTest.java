package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ExchangeSieveTest {
    private final List<Long> kept = new ArrayList<>();
    private final ExchangeSieve sieve = new ExchangeSieve(2, exchange -> kept.add(exchange.nanos()));

    private static ExchangeEntry exchange(long at, String instrument, String received, String trouble) {
        return new ExchangeEntry(at, instrument, "READ?", received, trouble);
    }

    @Test
    void smoothExchangesAreNotKept() {
        for (int i = 0; i < 10; i++) {
            sieve.take(exchange(i, "dmm", "+1.2500E+01", ""), 12.5);
        }
        assertThat(kept).isEmpty();
    }

    @Test
    void troubleIsKeptWithWhatCameBeforeAndAfter() {
        for (int i = 0; i < 10; i++) {
            sieve.take(exchange(100 + i, "load", "1", ""), 1);
            sieve.take(exchange(i, "dmm", i == 5 ? "" : "1", i == 5 ? "no answer in 1 s" : ""), 1);
        }
        assertThat(kept).containsExactly(3L, 4L, 5L, 6L, 7L);
    }

    @Test
    void aReplyThatSaysMoreThanItsNumberIsKept() {
        sieve.take(exchange(1, "dmm", "12.5,OVLD", ""), 12.5);
        sieve.take(exchange(2, "dmm", "12.50000000000001", ""), 12.5);
        sieve.take(exchange(3, "dmm", "12.5", ""), 12.5);
        assertThat(kept).containsExactly(1L, 2L);
    }

    @Test
    void theSettingUpIsKept() {
        sieve.settingUp(exchange(1, "dmm", "", ""));
        assertThat(kept).containsExactly(1L);
    }
}
