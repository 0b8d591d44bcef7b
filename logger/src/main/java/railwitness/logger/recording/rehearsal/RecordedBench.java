package railwitness.logger.recording.rehearsal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.scpi.Exchange;
import railwitness.drivers.scpi.LoggedInstrument;
import railwitness.drivers.scpi.Numeric;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.TimeSpan;

/**
 * The instruments of a session as they answered then: what is in its exchange log comes from there, the readings of the
 * rounds, which are kept as readings and not as exchanges, in their order. So a fault in the field becomes a test. Only the
 * answers are of that session: what is asked otherwise than then gets what was said last, or silence.
 */
public final class RecordedBench {
    private final Map<String, LoggedInstrument> byPort = new HashMap<>();

    /** @param bench the session's own, or one with the same names of instruments */
    public RecordedBench(SessionFile session, BenchSheet bench) {
        Map<String, List<Exchange>> logs = new HashMap<>();
        session.exchanges(entry -> logs.computeIfAbsent(entry.instrument(), name -> new ArrayList<>())
                .add(new Exchange(
                        entry.nanos(), entry.instrument(), false, entry.sent(), entry.received(), entry.trouble())));
        bench.instruments().stream()
                .filter(sheet -> !sheet.isByHand())
                .forEach(sheet -> byPort.put(
                        sheet.port().port(),
                        new LoggedInstrument(
                                logs.getOrDefault(sheet.name(), List.of()), new Rounds(session, sheet)::answer)));
    }

    /** Opens a line to them on the virtual clock, by the ports of the bench sheet. */
    public LineOpener opener(VirtualScheduler scheduler) {
        return port -> {
            LoggedInstrument found = byPort.get(port.port());
            if (found == null) {
                throw new LineException(
                        LineException.Trouble.NO_SUCH_PORT, port.port() + ": the session has no such port", "", "");
            }
            return new PeerLine(port.port(), found, scheduler);
        };
    }

    /** The one at that port. */
    public Optional<LoggedInstrument> at(String port) {
        return Optional.ofNullable(byPort.get(port));
    }

    /** What one instrument read, channel by channel; a question is told by its words. */
    private static final class Rounds {
        private final Map<Channel, Deque<Reading>> left = new HashMap<>();
        private final List<Channel> channels;
        private final Function<Measured, Double> shown;

        Rounds(SessionFile session, InstrumentSheet sheet) {
            channels = List.copyOf(sheet.reads());
            shown = sheet.duty() instanceof railwitness.drivers.bench.Duty.AsMeter meter
                    ? reading -> reading.value() * meter.setting().perUnit()
                    : Measured::value;
            channels.forEach(channel -> {
                Deque<Reading> all = left.computeIfAbsent(channel, any -> new ArrayDeque<>());
                session.readings(channel, TimeSpan.ALL, all::add);
            });
        }

        Optional<String> answer(String question) {
            return channels.stream()
                    .filter(channel -> asksFor(question, channel))
                    .findFirst()
                    .flatMap(this::next);
        }

        private boolean asksFor(String question, Channel channel) {
            String words = question.toUpperCase(Locale.ROOT);
            boolean measures = words.contains("READ") || words.contains("MEAS") || words.contains("FETC");
            String own = channel.quantity() == Quantity.CURRENT ? "CURR" : "VOLT";
            return measures && (channels.size() == 1 || words.contains(own));
        }

        /** A silence is a silence; after the last reading there is none. */
        private Optional<String> next(Channel channel) {
            Reading reading = left.get(channel).poll();
            if (reading instanceof Measured measured) {
                return Optional.of(Numeric.write(shown.apply(measured)));
            }
            return reading instanceof Overload ? Optional.of("9.9E37") : Optional.empty();
        }
    }
}
