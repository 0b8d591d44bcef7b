package railwitness.drivers.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import railwitness.drivers.instrument.Dialect;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.ScpiLoad;
import railwitness.drivers.instrument.ScpiMeter;
import railwitness.drivers.instrument.ScpiScope;
import railwitness.drivers.instrument.ScpiSupply;
import railwitness.drivers.line.LastingLine;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.line.Visible;
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Scheduler;

/** The first talk with one instrument: who is it, is it the right one, reset, set up. */
final class Introduction {
    /** A reset can keep an instrument busy with its relays. */
    private static final Duration RESET = Duration.ofSeconds(10);

    /** An instrument that is just waking up, or slow with long answers, is given so long to say who it is. */
    private static final Duration WAKING = Duration.ofSeconds(4);

    private static final Duration STEP = Duration.ofSeconds(1);

    private static final String IDENTITY = "*IDN?";

    private final InstrumentSheet sheet;
    private final LineOpener opener;
    private final Scheduler scheduler;
    private final ExchangeLog log;
    private final Dialects dialects;
    private PortSettings port;
    private Line line;
    private boolean repliesByCarriageReturn;

    /** An instrument ready for use, and the line to be closed with it. */
    record Met(Instrument instrument, Line line) {}

    Introduction(InstrumentSheet sheet, LineOpener opener, Scheduler scheduler, ExchangeLog log, Dialects dialects) {
        this.sheet = sheet;
        this.opener = opener;
        this.scheduler = scheduler;
        this.log = log;
        this.dialects = dialects;
    }

    Met meet() {
        try {
            return met();
        } catch (IllegalArgumentException e) {
            hangUp();
            throw new LineException(Trouble.REFUSED, e.getMessage() + "; see its dialect on the bench sheet", "", "");
        } catch (RuntimeException e) {
            hangUp();
            throw e;
        }
    }

    private void hangUp() {
        if (line != null) {
            line.close();
        }
    }

    private Met met() {
        Optional<Dialect> chosen = sheet.dialect().map(this::dialect);
        open(
                sheet.terminatorStated()
                        ? sheet.port().terminator()
                        : chosen.map(Dialect::terminator).orElse("\n"));
        String answer = identify();
        Dialect dialect = chosen.orElseGet(() -> dialects.forIdentity(answer));
        boolean free = !sheet.terminatorStated() && !repliesByCarriageReturn;
        if (free && !dialect.terminator().equals(port.terminator())) {
            line.close();
            open(dialect.terminator());
        }
        return new Met(instrument(dialect, Identity.of(answer), answer), line);
    }

    private Dialect dialect(String name) {
        return name.endsWith(".toml") ? Dialects.of(Path.of(name)) : dialects.named(name);
    }

    private void open(String terminator) {
        PortSettings given = sheet.port();
        port = new PortSettings(
                given.port(), given.baud(), given.dataBits(), given.parity(), given.stopBits(), terminator);
        try {
            line = new LastingLine(opener, port);
        } catch (LineException e) {
            throw e.of(sheet.name());
        }
    }

    private Dialogue dialogue(String errorQuery) {
        return new Dialogue(sheet.name(), line, scheduler, log, errorQuery, sheet.answerWithin());
    }

    private String identify() {
        String answer = whoIsThere();
        String expected = sheet.expect().orElse("");
        if (!answer.toLowerCase(Locale.ROOT).contains(expected.toLowerCase(Locale.ROOT))) {
            throw wrong("answers " + IDENTITY + " with '" + Visible.text(answer) + "', but the bench sheet expects '"
                    + expected + "'");
        }
        return answer;
    }

    /* Asked twice: what an earlier user left half sent can spoil the first question. */
    private String whoIsThere() {
        try {
            return dialogue("").ask(IDENTITY);
        } catch (LineException first) {
            if (first.trouble() != Trouble.NO_ANSWER && first.trouble() != Trouble.GARBLED) {
                throw first;
            }
            if (!sheet.terminatorStated() && first.received().endsWith("\r")) {
                line.close();
                open("\r");
                repliesByCarriageReturn = true;
            }
        }
        Duration patience = sheet.answerWithin().compareTo(WAKING) > 0 ? sheet.answerWithin() : WAKING;
        return dialogue("").ask(IDENTITY, patience);
    }

    private LineException wrong(String why) {
        return new LineException(
                Trouble.WRONG_INSTRUMENT,
                sheet.name() + " on " + line.port() + ": wrong instrument: it " + why
                        + "; are two cables swapped, or is the port on the bench sheet another's? Where it is right and"
                        + " only speaks otherwise, dialect on the bench sheet names a dialect that fits",
                IDENTITY,
                why);
    }

    private Instrument instrument(Dialect dialect, Identity identity, String answer) {
        Dialogue dialogue = dialogue(dialect.error());
        dialect.remote().forEach(dialogue::send);
        dialogue.getToKnow(answer, sheet.answerWithin().compareTo(STEP) < 0 ? sheet.answerWithin() : STEP);
        dialect.reset().forEach(dialogue::send);
        if (dialogue.hasErrorQueue()) {
            emptyErrors(dialogue);
        }
        try {
            return setUp(dialogue, dialect, identity);
        } catch (LineException e) {
            if (unknown(e, dialogue)) {
                throw wrong("is '" + identity + "' and does not understand '" + e.sent() + "' (" + e.received() + ")");
            }
            if (e.trouble() == Trouble.NO_ANSWER || e.trouble() == Trouble.GARBLED) {
                throw unanswered(e);
            }
            throw e;
        }
    }

    /*
     * After a reset an instrument may be busy for seconds. One that says who it is meanwhile, and still nothing of its
     * errors, has no queue of them.
     */
    private void emptyErrors(Dialogue dialogue) {
        try {
            dialogue.drain();
        } catch (LineException first) {
            if (first.trouble() != Trouble.NO_ANSWER && first.trouble() != Trouble.GARBLED) {
                throw first;
            }
            dialogue.ask(IDENTITY, RESET);
            emptyErrorsOrNone(dialogue);
        }
    }

    private static void emptyErrorsOrNone(Dialogue dialogue) {
        try {
            dialogue.drain();
        } catch (LineException second) {
            if (second.trouble() != Trouble.NO_ANSWER && second.trouble() != Trouble.GARBLED) {
                throw second;
            }
            dialogue.withoutErrorQueue();
        }
    }

    /* A bad query is answered by silence; the error queue then says why. */
    private static boolean unknown(LineException e, Dialogue dialogue) {
        if (e.trouble() == Trouble.REFUSED) {
            return e.received().startsWith("-113");
        }
        return e.trouble() == Trouble.NO_ANSWER
                && dialogue.drain().stream().anyMatch(entry -> entry.isUnknownCommand());
    }

    private LineException unanswered(LineException e) {
        return new LineException(
                e.trouble(),
                e.getMessage()
                        + " It has said who it is, but without this answer there is no run: where it is the right"
                        + " instrument and only speaks otherwise, give its words in a dialect of its own"
                        + " (dialect = \"mine.toml\" on the bench sheet)",
                e.sent(),
                e.received());
    }

    private Instrument setUp(Dialogue dialogue, Dialect dialect, Identity identity) {
        String terminator = port.terminator();
        if (sheet.duty() instanceof Duty.AsSupply supply) {
            ScpiSupply made = new ScpiSupply(dialogue, identity, dialect, terminator, supply.setting());
            made.setUp();
            return made;
        }
        if (sheet.duty() instanceof Duty.AsLoad load) {
            ScpiLoad made = new ScpiLoad(dialogue, identity, dialect, terminator, load.setting());
            made.setUp();
            return made;
        }
        if (sheet.duty() instanceof Duty.AsScope scope) {
            ScpiScope made = new ScpiScope(dialogue, identity, dialect, terminator, scope.setting());
            made.setUp();
            return made;
        }
        ScpiMeter made =
                new ScpiMeter(dialogue, identity, dialect, terminator, ((Duty.AsMeter) sheet.duty()).setting());
        made.setUp();
        return made;
    }
}
