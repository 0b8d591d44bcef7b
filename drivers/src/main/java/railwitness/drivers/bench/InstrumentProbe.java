package railwitness.drivers.bench;

import java.time.Duration;
import java.util.Optional;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Scheduler;

/** Looks at one instrument again and again; one that is not there is introduced anew at each look. */
final class InstrumentProbe {
    private static final String IDENTITY = "*IDN?";

    private final InstrumentSheet sheet;
    private final LineOpener opener;
    private final Scheduler scheduler;
    private Optional<Introduction.Met> met = Optional.empty();

    InstrumentProbe(InstrumentSheet sheet, LineOpener opener, Scheduler scheduler) {
        this.sheet = sheet;
        this.opener = opener;
        this.scheduler = scheduler;
    }

    String name() {
        return sheet.name();
    }

    /** One look: who it is, where that is not known yet, then what it reads. What goes wrong is told, not thrown. */
    Seen look() {
        try {
            if (met.isEmpty()) {
                met = Optional.of(
                        new Introduction(sheet, opener, scheduler, ExchangeLog.none(), Dialects.shipped()).meet());
            }
            return polled(met.get());
        } catch (LineException e) {
            hangUp();
            return Seen.absent(name(), Optional.of(e.trouble()), e.getMessage());
        } catch (RuntimeException e) {
            hangUp();
            return Seen.absent(name(), Optional.empty(), String.valueOf(e.getMessage()));
        }
    }

    private Seen polled(Introduction.Met known) {
        PollResult pollResult = known.instrument().poll();
        if (pollResult.readings().stream().allMatch(Missing.class::isInstance)) {
            known.line().ask(IDENTITY, patience());
        }
        return Seen.answers(known.instrument().identity(), pollResult);
    }

    private Duration patience() {
        return sheet.answerWithin();
    }

    /** Lets go of the port; the next look begins from the start. */
    void hangUp() {
        met.ifPresent(known -> known.line().close());
        met = Optional.empty();
    }
}
