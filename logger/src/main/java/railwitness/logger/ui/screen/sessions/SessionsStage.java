package railwitness.logger.ui.screen.sessions;

import java.awt.CardLayout;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonPdf;
import railwitness.logger.reporting.exporting.SessionExport;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Busy;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.FileChoice;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sentences;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * All sessions of the folder: looked for, opened, held against each other, verified, exported, certified; tables and
 * traces from elsewhere are brought in here.
 */
public final class SessionsStage implements Stage {
    /** What the right half, and while comparing the left too, is used for. */
    private enum Use {
        LIST,
        COMPARISON,
        TABLE,
        TRACE
    }

    private final WindowModel desk;
    private final Runnable opened;
    private final Runnable certificate;
    private final Busy busy;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 60,fill][grow 40,fill]"));
    private final JPanel left = new JPanel(new CardLayout());
    private final JPanel right = new JPanel(new CardLayout());
    private final SessionList list;
    private final AboutSession about = new AboutSession();
    private final ComparisonView comparison;
    private final TablePanel table;
    private final TracePanel trace;
    private Use use = Use.LIST;

    /**
     * @param opened told when a session was opened
     * @param certificate told behind it when its certificate is wanted
     */
    public SessionsStage(WindowModel desk, Runnable opened, Runnable certificate) {
        this.desk = desk;
        this.opened = opened;
        this.certificate = certificate;
        this.busy = new Busy(desk);
        this.list = new SessionList(desk, this::moved);
        this.comparison = new ComparisonView(desk);
        this.table = new TablePanel(desk);
        this.trace = new TracePanel(desk);
        left.add(list.face(), Use.LIST.name());
        left.add(comparison.left(), Use.COMPARISON.name());
        right.setOpaque(false);
        right.add(Scroll.of(about), Use.LIST.name());
        right.add(comparison.right(), Use.COMPARISON.name());
        right.add(Scroll.of(table), Use.TABLE.name());
        right.add(Scroll.of(trace), Use.TRACE.name());
        face.add(left, "grow, push, w 60%!");
        Sheet paper = new Sheet(new MigLayout("insets 14 18 8 12, fill"), Palette::paper);
        paper.add(right, "grow, push, wmin 0, hmin 0");
        face.add(paper, "grow, push, w 40%!");
    }

    @Override
    public String key() {
        return "sessions";
    }

    @Override
    public JComponent face() {
        return face;
    }

    @Override
    public Optional<String> closed() {
        return desk.running() ? Optional.of(Words.of("closed.running")) : Optional.empty();
    }

    @Override
    public void entered() {
        list.read();
    }

    private void moved() {
        about.show(list.chosen());
    }

    private void use(Use wanted) {
        use = wanted;
        ((CardLayout) left.getLayout()).show(left, wanted == Use.COMPARISON ? wanted.name() : Use.LIST.name());
        ((CardLayout) right.getLayout()).show(right, wanted.name());
        if (wanted == Use.LIST) {
            list.focus();
        }
    }

    private void leave() {
        desk.message("");
        use(Use.LIST);
    }

    @Override
    public StatusLine line() {
        Optional<StatusLine> working = busy.line();
        if (working.isPresent()) {
            return working.get();
        }
        return switch (use) {
            case LIST -> list.marked().isEmpty() ? listLine() : markedLine();
            case COMPARISON ->
                StatusLine.of(
                        Words.of("comparison.line"),
                        Words.of("comparison.line.next"),
                        leaveAct(),
                        act("pdf", this::pdf));
            case TABLE -> formLine(table.good(), "import.line", this::takeTable);
            case TRACE -> formLine(trace.good(), "trace.line", this::takeTrace);
        };
    }

    private StatusLine listLine() {
        Act bring = act("table", this::chooseTable);
        Optional<SessionEntry> chosen = list.chosen();
        if (chosen.isEmpty() || chosen.get().head().isEmpty()) {
            return StatusLine.of(
                    Words.of("sessions.choose"),
                    chosen.map(SessionEntry::trouble).orElse(interrupted()),
                    bring);
        }
        return StatusLine.of(
                chosen.get().file().getFileName().toString(),
                interrupted(),
                bring,
                act("trace", this::chooseTrace),
                act("export", this::export),
                act("verify", this::verify),
                act("history", list::history),
                act("pair", this::pair),
                act("mark", list::mark),
                act("certify", this::certify),
                usual("open", this::openChosen));
    }

    private StatusLine markedLine() {
        List<Act> acts = new ArrayList<>();
        acts.add(act("unmark.all", list::unmarkAll));
        list.chosen()
                .filter(entry -> entry.head().isPresent())
                .ifPresent(entry -> acts.add(new Act(
                        "mark",
                        Words.of(list.isMarked(entry) ? "act.unmark" : "act.mark"),
                        "control M",
                        false,
                        list::mark)));
        int count = list.marked().size();
        if (count > 1) {
            acts.add(usual("compare", this::compare));
        }
        return StatusLine.of(
                Words.of("sessions.marked", count),
                Words.of(count > 1 ? "sessions.marked.enough" : "sessions.marked.more"),
                acts.toArray(new Act[0]));
    }

    private StatusLine formLine(boolean good, String key, Runnable done) {
        return good
                ? StatusLine.of(Words.of(key), Words.of(key + ".next"), leaveAct(), usual("take", done))
                : StatusLine.of(Words.of(key), Words.of(key + ".fault"), leaveAct());
    }

    private Act leaveAct() {
        return act("leave", this::leave);
    }

    /** An act with its word and its key from the bundle. */
    private static Act act(String name, Runnable done) {
        return new Act(name, Words.of("act." + name), Words.of("stroke." + name), false, done);
    }

    private static Act usual(String name, Runnable done) {
        return new Act(name, Words.of("act." + name), "control ENTER", true, done);
    }

    private String interrupted() {
        long count = list.interrupted();
        return count == 0 ? "" : Words.of("sessions.interrupted", count);
    }

    private Path chosen() {
        return list.chosen().orElseThrow().file();
    }

    private FileChoice files() {
        return new FileChoice(face, desk.folder());
    }

    private void openChosen() {
        open(chosen(), opened);
    }

    private void certify() {
        open(chosen(), () -> {
            opened.run();
            certificate.run();
        });
    }

    private void open(Path file, Runnable then) {
        busy.go(
                Words.of("sessions.opening", file.getFileName()),
                progress -> WindowModel.OpenSession.of(file),
                found -> {
                    desk.session(found);
                    then.run();
                });
    }

    private void verify() {
        Path file = chosen();
        about.said("", "");
        busy.go(
                Words.of("sessions.verifying", file.getFileName()),
                progress -> Verification.of(file, progress::at),
                found -> {
                    about.said(
                            Words.of("sessions.verified", file.getFileName()), Sentences.capital(found.words()) + ".");
                    desk.message(Words.of(found.isIntact() ? "sessions.intact" : "sessions.notintact"));
                });
    }

    private void pair() {
        if (list.pair()) {
            compare();
        } else {
            desk.message(Words.of("sessions.nopair"));
        }
    }

    private void compare() {
        List<Path> files = list.marked();
        busy.go(
                Words.of("sessions.comparing", files.size()),
                progress -> ComparisonView.Worked.of(Comparison.of(files, progress::at)),
                found -> {
                    comparison.show(found);
                    use(Use.COMPARISON);
                });
    }

    private void pdf() {
        Path usual = SessionFolder.free(desk.folder(), Words.of("comparison.file"), ".pdf");
        files().save(Words.of("act.pdf"), usual).ifPresent(out -> {
            Comparison shown = comparison.comparison();
            busy.go(
                    Words.of("comparison.saving"),
                    progress -> {
                        ComparisonPdf.write(shown, out);
                        return out;
                    },
                    made -> desk.message(Words.of("comparison.saved", made)));
        });
    }

    private void export() {
        Path file = chosen();
        about.said("", "");
        Path usual = SessionFolder.free(desk.folder(), SessionFolder.stem(file), "");
        files().folder(Words.of("export.folder"), usual).ifPresent(folder -> {
            SessionExport export = new SessionExport(file, folder);
            busy.go(
                    Words.of("sessions.exporting", file.getFileName()),
                    progress -> export.write((share, readings) -> progress.at(share)),
                    readings -> {
                        about.said(Words.of("export.done"), Words.of("export.words", readings, folder));
                        desk.message(Words.of("export.done"));
                    });
        });
    }

    private void chooseTable() {
        files().open(Words.of("import.title")).ifPresent(file -> {
            desk.message("");
            table.show(file);
            use(Use.TABLE);
        });
    }

    private void takeTable() {
        take(Words.of("import.working"), table.taken());
    }

    private void chooseTrace() {
        Path session = chosen();
        files().open(Words.of("trace.title")).ifPresent(file -> {
            desk.message("");
            trace.show(file, session);
            use(Use.TRACE);
        });
    }

    private void takeTrace() {
        take(Words.of("trace.working"), trace.taken());
    }

    private void take(String words, WindowModel.Working<Path> task) {
        busy.go(words, task, made -> {
            leave();
            open(made, opened);
        });
    }
}
