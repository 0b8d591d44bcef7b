package railwitness.logger.recording.record;

import railwitness.drivers.scpi.Exchange;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.logger.recording.store.ExchangeEntry;
import railwitness.logger.recording.store.ExchangeSieve;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionWriter;

/**
 * Hands the exchanges with instruments to the recorder, whose thread sifts them: the setting-up and every command are
 * kept, of the regular questions only those that went wrong with what came before and after, and replies that say more
 * than the number that was read.
 */
final class ExchangeKeeper implements ExchangeLog {
    private static final int AROUND = 1;

    private final Recorder recorder;
    private final ExchangeSieve sieve = new ExchangeSieve(AROUND, this::keep);
    private SessionWriter writing;

    ExchangeKeeper(Recorder recorder) {
        this.recorder = recorder;
    }

    @Override
    public void ended(Exchange exchange) {
        ExchangeEntry entry = new ExchangeEntry(
                exchange.atNanos(), exchange.instrument(), exchange.sent(), exchange.received(), exchange.trouble());
        recorder.offer(writer -> {
            writing = writer;
            sift(exchange.polling(), entry);
        });
    }

    /** On the writer's thread, like everything below. */
    private void sift(boolean polling, ExchangeEntry entry) {
        String reply = entry.received();
        if (!polling) {
            sieve.settingUp(entry);
        } else if (isPlainNumber(reply)) {
            sieve.take(entry, Double.parseDouble(reply));
        } else if (reply.chars().anyMatch(Character::isDigit)) {
            sieve.take(entry, Double.NaN);
        } else {
            sieve.take(entry);
        }
    }

    private void keep(ExchangeEntry entry) {
        writing.add(entry);
    }

    private static boolean isPlainNumber(String text) {
        try {
            Double.parseDouble(text);
            return true;
        } catch (NumberFormatException e) {
            return false;
        }
    }
}
