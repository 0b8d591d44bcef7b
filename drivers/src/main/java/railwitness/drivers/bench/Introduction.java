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
import railwitness.drivers.scpi.Dialogue;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.Agenda;

/** The first talk with one instrument: who is it, is it the right one, reset, set up. */
final class Introduction {
    /** A reset can keep an instrument busy with its relays. */
    private static final Duration RESET = Duration.ofSeconds(10);

    private static final String IDENTITY = "*IDN?";

    private final InstrumentSheet sheet;
    private final LineOpener opener;
    private final Agenda agenda;
    private final ExchangeLog log;
    private final Dialects dialects;
    private PortSettings port;
    private Line line;

    /** An instrument ready for use, and the line to be closed with it. */
    record Met(Instrument instrument, Line line) {}

    Introduction(InstrumentSheet sheet, LineOpener opener, Agenda agenda, ExchangeLog log, Dialects dialects) {
        this.sheet = sheet;
        this.opener = opener;
        this.agenda = agenda;
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
        if (!sheet.terminatorStated() && !dialect.terminator().equals(port.terminator())) {
            line.close();
            open(dialect.terminator());
        }
        return new Met(instrument(dialect, Identity.of(answer)), line);
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
        return new Dialogue(sheet.name(), line, agenda, log, errorQuery, sheet.answerWithin());
    }

    /* Asked twice: what an earlier user left half sent can spoil the first question. */
    private String identify() {
        Dialogue dialogue = dialogue("");
        String answer;
        try {
            answer = dialogue.ask(IDENTITY);
        } catch (LineException first) {
            if (first.trouble() != Trouble.NO_ANSWER && first.trouble() != Trouble.GARBLED) {
                throw first;
            }
            answer = dialogue.ask(IDENTITY);
        }
        String expected = sheet.expect().orElse("");
        if (!answer.toLowerCase(Locale.ROOT).contains(expected.toLowerCase(Locale.ROOT))) {
            throw wrong(
                    "answers " + IDENTITY + " with '" + answer + "', but the bench sheet expects '" + expected + "'");
        }
        return answer;
    }

    private LineException wrong(String why) {
        return new LineException(
                Trouble.WRONG_INSTRUMENT,
                sheet.name() + " on " + line.port() + ": wrong instrument: it " + why
                        + "; are two cables swapped, or is the port on the bench sheet another's?",
                IDENTITY,
                why);
    }

    private Instrument instrument(Dialect dialect, Identity identity) {
        Dialogue dialogue = dialogue(dialect.error());
        dialect.remote().forEach(dialogue::send);
        dialect.reset().forEach(dialogue::send);
        dialogue.drain(RESET);
        try {
            return setUp(dialogue, dialect, identity);
        } catch (LineException e) {
            if (unknown(e, dialogue)) {
                throw wrong("is '" + identity + "' and does not understand '" + e.sent() + "' (" + e.received() + ")");
            }
            throw e;
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
