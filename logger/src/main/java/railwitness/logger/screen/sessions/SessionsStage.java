package railwitness.logger.screen.sessions;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.event.DocumentEvent;
import javax.swing.event.DocumentListener;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.comparing.Comparison;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Note;
import railwitness.logger.screen.paper.RuledSheet;
import railwitness.logger.screen.paper.Scroll;
import railwitness.logger.screen.paper.Sheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.stage.SessionNames;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.Verification;

/** All sessions of the folder: looked for, opened, held against each other, verified. */
public final class SessionsStage implements Stage {
    private final Desk desk;
    private final Runnable opened;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 60,fill][grow 40,fill]"));
    private final JTextField search = new JTextField(18);
    private final RuledSheet sheet = new RuledSheet("sessions list", SessionRows.columns());
    private final Note empty = Note.muted("", Type.TEXT);
    private final ComparisonPanel comparison = new ComparisonPanel();
    private List<SessionEntry> all = List.of();
    private List<SessionEntry> shown = List.of();
    private Optional<Path> marked = Optional.empty();
    private boolean working;

    /** @param opened told when a session was opened */
    public SessionsStage(Desk desk, Runnable opened) {
        this.desk = desk;
        this.opened = opened;
        face.add(left(), "grow, push, w 60%!");
        Sheet right = new Sheet(new MigLayout("insets 14 18 8 12, fill"), Palette::paper);
        right.add(Scroll.of(comparison), "grow, push");
        face.add(right, "grow, push, w 40%!");
        sheet.onChosen(row -> {});
        search.setName("search");
        search.getAccessibleContext().setAccessibleName(Words.of("sessions.search"));
        search.putClientProperty("JTextField.placeholderText", Words.of("sessions.search"));
        search.getDocument().addDocumentListener(new DocumentListener() {
            @Override
            public void insertUpdate(DocumentEvent e) {
                show();
            }

            @Override
            public void removeUpdate(DocumentEvent e) {
                show();
            }

            @Override
            public void changedUpdate(DocumentEvent e) {
                show();
            }
        });
    }

    private JComponent left() {
        Sheet left = new Sheet(
                new MigLayout(
                        "insets 14 20 10 20, gap 0, fill, wrap 1, hidemode 3", "[grow,fill]", "[][]12[grow,fill][]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        JPanel head = new JPanel(new MigLayout("insets 0, gap 10, fillx", "[grow,fill][]"));
        head.setOpaque(false);
        head.add(Label.of(Words.of("sessions.title"), Type.TITLE), "wmin 0");
        head.add(search, "h 32!, w 220!");
        left.add(head);
        left.add(Label.muted(Words.of("sessions.folder", desk.folder()), Type.TEXT), "wmin 0");
        left.add(Scroll.of(sheet), "grow, push");
        left.add(empty, "growx, wmin 60");
        return left;
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
        read();
    }

    /** Heads first, so that the list is there at once; the verdicts follow one after the other. */
    private void read() {
        Path folder = desk.folder();
        desk.work(
                () -> listed(folder),
                found -> {
                    all = found;
                    show();
                    found.forEach(this::judge);
                },
                desk::message);
    }

    private static List<SessionEntry> listed(Path folder) throws java.io.IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .map(SessionEntry::read)
                    .sorted(Comparator.comparing((SessionEntry entry) ->
                                    entry.head().map(head -> head.startedWall()).orElse(java.time.Instant.EPOCH))
                            .reversed())
                    .toList();
        }
    }

    private void judge(SessionEntry entry) {
        desk.work(
                entry::judged,
                judged -> {
                    List<SessionEntry> next = new ArrayList<>(all);
                    next.replaceAll(one -> one.file().equals(judged.file()) ? judged : one);
                    all = next;
                    show();
                },
                desk::message);
    }

    private void show() {
        shown = all.stream().filter(entry -> entry.has(search.getText())).toList();
        sheet.rows(SessionRows.of(shown, marked));
        empty.setVisible(shown.isEmpty());
        empty.setText(Words.of(all.isEmpty() ? "sessions.none" : "sessions.nothing"));
    }

    private Optional<SessionEntry> chosen() {
        int row = sheet.selected();
        return row >= 0 && row < shown.size() ? Optional.of(shown.get(row)) : Optional.empty();
    }

    @Override
    public Line line() {
        Optional<SessionEntry> chosen = chosen();
        if (working) {
            return Line.of(Words.of("sessions.working"), "");
        }
        if (chosen.isEmpty() || chosen.get().head().isEmpty()) {
            return Line.of(
                    Words.of("sessions.choose"),
                    chosen.map(SessionEntry::trouble).orElse(interrupted()));
        }
        List<Act> acts = new ArrayList<>();
        acts.add(new Act("verify", Words.of("act.verify"), "control K", false, this::verify));
        boolean other = marked.isPresent() && !marked.get().equals(chosen.get().file());
        acts.add(
                other
                        ? new Act("compare", Words.of("act.compare"), "control M", false, this::compare)
                        : new Act("mark", Words.of("act.mark"), "control M", false, this::mark));
        acts.add(new Act("open", Words.of("act.open"), "control ENTER", true, this::openChosen));
        String words =
                marked.isPresent() ? Words.of("sessions.marked", marked.get().getFileName()) : interrupted();
        return Line.of(chosen.get().file().getFileName().toString(), words, acts.toArray(new Act[0]));
    }

    private String interrupted() {
        long count = all.stream()
                .filter(entry -> entry.head().isPresent() && entry.state() == SessionState.INTERRUPTED)
                .count();
        return count == 0 ? "" : Words.of("sessions.interrupted", count);
    }

    private void openChosen() {
        chosen().ifPresent(entry -> desk.open(entry.file(), opened));
    }

    private void mark() {
        marked = chosen().map(SessionEntry::file);
        show();
    }

    private void verify() {
        Path file = chosen().orElseThrow().file();
        work(() -> Verification.of(file), found -> desk.message(file.getFileName() + ": " + found.words()));
    }

    private void compare() {
        List<Path> both = List.of(marked.orElseThrow(), chosen().orElseThrow().file());
        work(() -> Comparison.of(both), found -> {
            comparison.show(found);
            marked = Optional.empty();
            show();
        });
    }

    private <T> void work(java.util.concurrent.Callable<T> task, java.util.function.Consumer<T> done) {
        working = true;
        desk.work(
                task,
                found -> {
                    working = false;
                    done.accept(found);
                },
                why -> {
                    working = false;
                    desk.message(why);
                });
    }
}
