package railwitness.logger.ui.screen.stage;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.SwingUtilities;
import railwitness.logger.recording.sheet.SheetKind;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.live.RunStarter;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.widgets.Words;

/** Everything that is open: the sheets, how it is run, the run, the session looked at. Used on the event thread alone. */
public final class WindowModel {
    private final RunStarter starter;
    private final Path folder;
    private final PortUse ports = new PortUse();
    private final Remembered remembered;
    private final Sounds sounds;
    private final Map<SheetKind, String> unfinished = new EnumMap<>(SheetKind.class);
    private final Set<SheetKind> unsaved = EnumSet.noneOf(SheetKind.class);
    private final List<Runnable> watchers = new ArrayList<>();
    private final ExecutorService workers = Executors.newFixedThreadPool(2, task -> {
        Thread thread = new Thread(task, "behind the desk");
        thread.setDaemon(true);
        return thread;
    });
    private Sheets sheets = Sheets.demo();
    private List<String> leads = List.of();
    private boolean demo = true;
    private Rehearsal rehearsal = Rehearsal.usual();
    private boolean virtualBench = true;
    private Optional<LiveRun> run = Optional.empty();
    private Optional<RunView> view = Optional.empty();
    private Optional<OpenSession> session = Optional.empty();
    private String message = "";
    private String examples = "";
    private Supplier<Optional<AtRest>> watched = Optional::empty;

    /**
     * A session that is looked at.
     *
     * @param file where it is kept
     */
    public record OpenSession(Path file, SessionFindings findings) {
        /** Works it out; slow. */
        public static OpenSession of(Path file) {
            return new OpenSession(file, SessionFindings.of(file));
        }
    }

    /** @param folder where sessions are kept */
    public WindowModel(RunStarter starter, Path folder) {
        this.starter = starter;
        this.folder = folder;
        this.remembered = new Remembered(folder);
        this.sounds = new Sounds(remembered);
    }

    /** @param changed told whenever something on the desk has changed */
    public void watch(Runnable changed) {
        watchers.add(changed);
    }

    private void changed() {
        List.copyOf(watchers).forEach(Runnable::run);
    }

    public RunStarter starter() {
        return starter;
    }

    public Path folder() {
        return folder;
    }

    /** Who holds ports at present. */
    public PortUse ports() {
        return ports;
    }

    /** What is remembered for the next time. */
    public Remembered remembered() {
        return remembered;
    }

    /** What is heard. */
    public Sounds sounds() {
        return sounds;
    }

    public Sheets sheets() {
        return sheets;
    }

    /**
     * A sheet is being written and cannot be used yet; what lies on the desk is older than what the person sees.
     *
     * @param why in words; empty when it is in order again
     */
    public void unfinished(SheetKind kind, String why) {
        if (why.isEmpty()) {
            unfinished.remove(kind);
        } else {
            unfinished.put(kind, why);
        }
    }

    /** @param words why nothing can be run: examples that nobody has looked at; empty when there are none */
    public void examples(String words) {
        examples = words;
    }

    /** Whether a sheet was changed and not saved. */
    public void unsaved(SheetKind kind, boolean changed) {
        if (changed) {
            unsaved.add(kind);
        } else {
            unsaved.remove(kind);
        }
    }

    /** Whether something of this sheet would be lost if another took its place. */
    public boolean unsaved(SheetKind kind) {
        return unsaved.contains(kind);
    }

    /** Why the sheets cannot be used as they are; empty when they can. */
    public Optional<String> unfinished() {
        return unfinished.values().stream().findFirst().or(() -> Optional.of(examples)
                .filter(words -> !words.isEmpty()));
    }

    /** Why a changed sheet cannot be saved as the person sees it; empty when it can. */
    public Optional<String> unfinishedSheet() {
        return unfinished.entrySet().stream()
                .filter(entry -> unsaved.contains(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** Nothing but the demo lies on the desk. */
    public boolean demo() {
        return demo;
    }

    public void sheets(Sheets wanted) {
        if (!wanted.bench().text().equals(sheets.bench().text())) {
            leads = List.of();
        }
        sheets = wanted;
        demo = false;
        changed();
    }

    /** What was found at the leads of the bench on the desk, a line each; empty where nobody looked. */
    public List<String> leads() {
        return leads;
    }

    public void leads(List<String> found) {
        leads = List.copyOf(found);
    }

    public boolean virtualBench() {
        return virtualBench;
    }

    public void virtualBench(boolean wanted) {
        leads = virtualBench == wanted ? leads : List.of();
        virtualBench = wanted;
        changed();
    }

    public Rehearsal rehearsal() {
        return rehearsal;
    }

    public void rehearsal(Rehearsal wanted) {
        rehearsal = wanted;
        changed();
    }

    /** The run that goes on, or the last one. */
    public Optional<LiveRun> run() {
        return run;
    }

    /** The run as it was when the window last looked: all that is shown of one moment belongs together. */
    public Optional<RunView> view() {
        return view;
    }

    /** Looks at the run anew. */
    public void look() {
        view = run.map(LiveRun::view);
    }

    /** What is known of a bench that is watched; empty while nobody watches. */
    public Optional<AtRest> atRest() {
        return watched.get();
    }

    /** @param watch tells it, at any time */
    public void watchedBy(Supplier<Optional<AtRest>> watch) {
        watched = watch;
    }

    /** Whether what lies on the desk is what the run was, or is, about. */
    public boolean shownByRun() {
        return running()
                || run.filter(last -> last.sheets() == sheets && last.rehearsal() == virtualBench)
                        .isPresent();
    }

    /** A run that may still have its output on. */
    public boolean running() {
        return run.isPresent() && !run.get().over();
    }

    public void run(LiveRun begun) {
        run = Optional.of(begun);
        look();
        session = Optional.empty();
        changed();
    }

    public Optional<OpenSession> session() {
        return session;
    }

    public void session(OpenSession opened) {
        session = Optional.of(opened);
        said(opened);
        changed();
    }

    /** Slow work that tells how far it is. */
    @FunctionalInterface
    public interface Working<T> {
        T call(Work progress) throws Exception;
    }

    /** Opens a session in the background. */
    public void open(Path file, Runnable opened) {
        work(
                () -> OpenSession.of(file),
                found -> {
                    session(found);
                    opened.run();
                },
                this::message);
    }

    /** What the person must know of a session before believing it. */
    private void said(OpenSession opened) {
        if (opened.findings().chain().isBroken()) {
            message(Words.of("sessions.broken", opened.file().getFileName()));
        } else if (!opened.findings().chain().isKnown()) {
            message(Words.of("sessions.unknown", opened.file().getFileName()));
        }
    }

    /** One line for the person, until the next thing happens. */
    public String message() {
        return message;
    }

    public void message(String words) {
        message = words;
        changed();
    }

    /**
     * Does slow work behind the desk.
     *
     * @param done told the outcome, on the event thread
     * @param failed told why there is none, in words, on the event thread
     */
    public <T> void work(Callable<T> work, Consumer<T> done, Consumer<String> failed) {
        workers.execute(() -> {
            try {
                T outcome = work.call();
                SwingUtilities.invokeLater(() -> done.accept(outcome));
            } catch (Exception | Error e) {
                String words = railwitness.logger.ui.screen.widgets.Trouble.words(e);
                SwingUtilities.invokeLater(() -> failed.accept(words));
            }
        });
    }

    /** The same for work that tells how far it is; the answer shows it while it goes on. */
    public <T> Work work(String words, Working<T> task, Consumer<T> done, Consumer<String> failed) {
        Work work = new Work(words);
        work(() -> task.call(work), done, failed);
        return work;
    }
}
