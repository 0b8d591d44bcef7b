package railwitness.logger.record;

import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import railwitness.drivers.scpi.Exchange;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.logger.store.ExchangeEntry;
import railwitness.logger.store.Recorder;

/**
 * Of the exchanges, those worth keeping: the setting-up and every command, everything that went wrong, and the one
 * before and the one after it. The regular good answers are in the readings.
 */
final class ExchangeKeeper implements ExchangeLog {
    private final Recorder recorder;
    private final Map<String, Exchange> before = new ConcurrentHashMap<>();
    private final Set<String> keepNext = ConcurrentHashMap.newKeySet();

    ExchangeKeeper(Recorder recorder) {
        this.recorder = recorder;
    }

    @Override
    public void ended(Exchange exchange) {
        String instrument = exchange.instrument();
        boolean after = keepNext.remove(instrument);
        if (!exchange.good()) {
            Exchange last = before.remove(instrument);
            if (last != null) {
                keep(last);
            }
            keepNext.add(instrument);
            keep(exchange);
        } else if (!exchange.polling() || after) {
            keep(exchange);
        } else {
            before.put(instrument, exchange);
        }
    }

    private void keep(Exchange exchange) {
        recorder.add(new ExchangeEntry(
                exchange.atNanos(), exchange.instrument(), exchange.sent(), exchange.received(), exchange.trouble()));
    }
}
