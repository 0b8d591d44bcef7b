package railwitness.logger.recording.record;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import railwitness.analysis.transformer.WoundAsMeant;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.sheet.SheetsCheck;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StoreException;
import railwitness.safety.caution.Acknowledgement;

/**
 * A session from its three sheets to its closed file: the file is made first, so that everything that happens is kept,
 * then the bench is opened, then the plan is run.
 */
public final class LiveSession {
    private final Sheets sheets;
    private final Scheduler scheduler;
    private final LineOpener opener;
    private final WorkerMaker maker;
    private final Recording recording;
    private final Person person;
    private final RunListener listener;
    private Function<Bench, Guard> guarding = bench -> Guard.none();
    private Optional<Acknowledgement> acknowledgement = Optional.empty();
    private Optional<Remainder> remainder = Optional.empty();
    private List<String> leads = List.of();
    private volatile Run run;
    private volatile Optional<StoreException> storeTrouble = Optional.empty();

    /** How entries come to the file: by a thread of its own, or at once. */
    @FunctionalInterface
    public interface Recording {
        Recorder of(SessionWriter writer, Consumer<StoreException> onTrouble);
    }

    /** @param recording a thread of its own on a real bench, inline on the virtual clock */
    public LiveSession(
            Sheets sheets,
            Scheduler scheduler,
            LineOpener opener,
            WorkerMaker maker,
            Recording recording,
            Person person,
            RunListener listener) {
        this.sheets = sheets;
        this.scheduler = scheduler;
        this.opener = opener;
        this.maker = maker;
        this.recording = recording;
        this.person = person;
        this.listener = listener;
    }

    /** Who took responsibility, and what they had checked, is kept in the session. */
    public void acknowledged(Acknowledgement given) {
        acknowledgement = Optional.of(given);
    }

    /** What was found at the leads before power, a line each, is kept in the session. */
    public void leads(List<String> found) {
        leads = List.copyOf(found);
    }

    private void keep(Recorder recorder, Acknowledgement given) {
        keep(recorder, new SessionEvent.Said(EventKind.ACKNOWLEDGED, given.sentence()));
        given.answers().stream()
                .filter(answer -> answer.ohms().isPresent())
                .forEach(answer -> keep(
                        recorder,
                        new SessionEvent.ColdResistance(
                                answer.check().text(), answer.ohms().getAsDouble())));
    }

    private void keep(Recorder recorder, SessionEvent event) {
        recorder.add(new EventEntry(scheduler.nowNanos(), event));
    }

    private void told(SessionEvent event) {
        listener.happened(scheduler.nowNanos() / 1e9, event);
    }

    /** Who switches off when this program dies; asked once the bench is open and before power. */
    public void guardedBy(Function<Bench, Guard> guard) {
        guarding = guard;
    }

    /** The file can no longer be written: the run ends safely, with all that was kept until then. */
    private void storeTrouble(StoreException trouble) {
        storeTrouble = Optional.of(trouble);
        running().ifPresent(mine -> mine.storeTrouble(trouble));
    }

    /**
     * Goes on with an interrupted session in its own file: checks and first power again, then what is left of the plan. The
     * scheduler's clock must show the session's axis.
     */
    public RunEnd goOn(Remainder left) {
        SheetsCheck.refuse(sheets);
        SessionWriter writer = SessionWriter.goOn(left.file(), scheduler.nowNanos(), scheduler.wallNow());
        Recorder recorder = recording.of(writer, this::storeTrouble);
        remainder = Optional.of(left);
        try {
            acknowledgement.ifPresent(given -> keep(recorder, given));
            recorder.add(new EventEntry(scheduler.nowNanos(), left.gap(scheduler.nowNanos())));
            try (Bench bench = opened(recorder)) {
                return carriedOut(recorder, prepared(recorder, bench));
            }
        } finally {
            recorder.close();
        }
    }

    /** Runs on the calling thread until the output is off and the file is closed. */
    public RunEnd run(Path out, SessionHead head) {
        SheetsCheck.refuse(sheets);
        SessionWriter writer = SessionWriter.create(out, head);
        Recorder recorder = recording.of(writer, this::storeTrouble);
        try {
            acknowledgement.ifPresent(given -> keep(recorder, given));
            leads.forEach(words -> keep(recorder, new SessionEvent.Said(EventKind.LEADS, words)));
            keep(recorder, sheets.design());
            keep(recorder, sheets.bench());
            keep(recorder, sheets.plan());
            try (Bench bench = opened(recorder)) {
                bench.workers().forEach(worker -> keep(recorder, worker, bench));
                return carriedOut(recorder, prepared(recorder, bench));
            }
        } finally {
            recorder.close();
        }
    }

    private Bench opened(Recorder recorder) {
        try {
            return Bench.open(
                    sheets.bench().content(),
                    opener,
                    scheduler,
                    maker,
                    new ExchangeKeeper(recorder),
                    words -> told(new SessionEvent.Said(EventKind.OPENING, words)),
                    Optional.of(new PersonsHand(
                            scheduler, person, sheets.plan().content().answerAtMost(), words -> running()
                                    .ifPresent(mine -> mine.handSilent(words)))));
        } catch (RuntimeException e) {
            throw withoutPower(recorder, EventKind.NO_BENCH, e);
        }
    }

    private Run prepared(Recorder recorder, Bench bench) {
        try {
            RunSetup setup = new RunSetup(
                    scheduler,
                    bench,
                    sheets.design().content(),
                    sheets.plan().content(),
                    sheets.plan().content().transformer().isPresent()
                            ? WoundAsMeant.of(sheets.wound())
                            : Optional.empty(),
                    steps -> remainder.map(left -> left.of(steps)).orElse(steps));
            return new Run(setup, recorder, person, listener, guarding.apply(bench));
        } catch (RuntimeException e) {
            throw withoutPower(recorder, EventKind.NO_POWER, e);
        }
    }

    /** The session ends before there was power, and says why. */
    private RuntimeException withoutPower(Recorder recorder, EventKind kind, RuntimeException why) {
        SessionEvent event = new SessionEvent.Said(kind, String.valueOf(why.getMessage()));
        keep(recorder, event);
        told(event);
        recorder.finish(SessionState.TRIPPED);
        return why;
    }

    private RunEnd carriedOut(Recorder recorder, Run mine) {
        run = mine;
        storeTrouble.ifPresent(mine::storeTrouble);
        RunEnd[] end = new RunEnd[1];
        try {
            mine.start(over -> end[0] = over);
            scheduler.runUntil(() -> end[0] != null);
        } catch (RuntimeException | Error mistake) {
            switchedOff(mine, mistake, () -> end[0] != null);
            throw mistake;
        }
        if (storeTrouble.isPresent()) {
            throw storeTrouble.get();
        }
        return end[0];
    }

    /** After a mistake in the program the run still goes its way to off, as often as that takes. */
    private void switchedOff(Run mine, Throwable first, BooleanSupplier over) {
        Throwable mistake = first;
        while (mine.mistaken(mistake)) {
            try {
                scheduler.runUntil(over);
                return;
            } catch (RuntimeException | Error another) {
                mistake = another;
            }
        }
        mine.brokenOff(mistake);
    }

    /** The run, once the bench is open. */
    public Optional<Run> running() {
        return Optional.ofNullable(run);
    }

    private static void keep(Recorder recorder, SheetText<?> sheet) {
        recorder.offer(writer -> writer.sheet(sheet.kind(), sheet.fileName(), sheet.text()));
    }

    private static void keep(Recorder recorder, InstrumentWorker<? extends Instrument> worker, Bench bench) {
        InstrumentSheet sheet = bench.sheet().instrument(worker.name()).orElseThrow();
        String kind = kind(sheet.duty());
        String accuracy = sheet.accuracy().entrySet().stream()
                .map(entry -> entry.getKey().word() + ": " + entry.getValue().words())
                .sorted()
                .collect(Collectors.joining("; "));
        String calibrated =
                sheet.calibrated().map(date -> "; calibrated " + date).orElse("");
        recorder.offer(writer -> writer.instrument(
                sheet.name(),
                kind,
                sheet.port().port(),
                sheet.dialect().orElse(""),
                worker.instrument().identity(),
                accuracy + calibrated));
    }

    /** The word of the bench sheet. */
    private static String kind(Duty duty) {
        if (duty instanceof Duty.AsSupply) {
            return "supply";
        }
        if (duty instanceof Duty.AsMeter) {
            return "meter";
        }
        return duty instanceof Duty.AsLoad ? "load" : "scope";
    }
}
