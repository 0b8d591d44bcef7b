package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.swing.JComponent;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Keys;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Typing;
import railwitness.logger.ui.screen.widgets.Words;

/** The sessions of the folder, looked for by words; some are marked, in an order, to be compared. */
final class SessionList {
    private final WindowModel desk;
    private final Runnable moved;
    private final JTextField search = new JTextField(18);
    private final Label folder = Label.muted("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("sessions list", SessionRows.columns());
    private final Note empty = Note.muted("", Type.TEXT);
    private final Sheet face;
    private final List<Path> marked = new ArrayList<>();
    private List<SessionEntry> all = List.of();
    private List<SessionEntry> shown = List.of();
    private Optional<Path> chosen = Optional.empty();
    private int looks;

    /** @param moved told when another session is chosen, or one has changed */
    SessionList(WindowModel desk, Runnable moved) {
        this.desk = desk;
        this.moved = moved;
        face = new Sheet(
                new MigLayout(
                        "insets 14 20 10 20, gap 0, fill, wrap 1, hidemode 3", "[grow,fill]", "[][]12[grow,fill][]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        build();
    }

    private void build() {
        face.add(new FlowRow(10, Label.of(Words.of("sessions.title"), Type.TITLE), search), "growx, wmin 0");
        face.add(folder, "wmin 0");
        face.add(Scroll.of(sheet), "grow, push");
        face.add(empty, "growx, wmin 60");
        sheet.onMoved(row -> {
            chosen = Optional.of(shown.get(row).file());
            moved.run();
        });
        Keys.on(sheet, "SPACE", this::mark);
        search.setName("search");
        search.getAccessibleContext().setAccessibleName(Words.of("sessions.search"));
        search.putClientProperty("JTextField.placeholderText", Words.of("sessions.search"));
        Keys.on(search, "DOWN", sheet::requestFocusInWindow);
        Keys.on(search, "ENTER", sheet::requestFocusInWindow);
        Typing.in(search, this::show);
    }

    JComponent face() {
        return face;
    }

    void focus() {
        sheet.requestFocusInWindow();
    }

    /** Heads first, so that the list is there at once; the verdicts follow one after the other. */
    void read() {
        int look = ++looks;
        Path where = desk.folder();
        desk.work(
                () -> SessionFolder.read(where),
                found -> {
                    if (look == looks) {
                        Map<Path, SessionEntry> before =
                                all.stream().collect(Collectors.toMap(SessionEntry::file, Function.identity()));
                        all = found.stream()
                                .map(one -> one.knowing(before.getOrDefault(one.file(), one)))
                                .toList();
                        marked.retainAll(all.stream().map(SessionEntry::file).toList());
                        show();
                        judgeNext(look);
                    }
                },
                desk::message);
    }

    /** One at a time, so that other work need not wait for all of them. */
    private void judgeNext(int look) {
        Optional<SessionEntry> next =
                all.stream().filter(SessionEntry::toBeJudged).findFirst();
        next.ifPresent(entry -> desk.work(
                entry::judged,
                judged -> {
                    if (look == looks) {
                        all = all.stream()
                                .map(one -> one.file().equals(judged.file()) ? judged : one)
                                .toList();
                        show();
                        judgeNext(look);
                    }
                },
                desk::message));
    }

    private void show() {
        shown = all.stream().filter(entry -> entry.has(search.getText())).toList();
        sheet.rows(SessionRows.of(shown, marked));
        int at = sheet.selected();
        if (place().isEmpty() && at >= 0 && at < shown.size()) {
            chosen = Optional.of(shown.get(at).file());
        }
        place().ifPresent(sheet::select);
        empty.setVisible(shown.isEmpty());
        empty.setText(Words.of(all.isEmpty() ? "sessions.none" : "sessions.nothing"));
        long waiting = all.stream().filter(SessionEntry::toBeJudged).count();
        folder.setText(
                waiting == 0
                        ? Words.of("sessions.folder", desk.folder())
                        : Words.of("sessions.judging", desk.folder(), all.size() - waiting, all.size()));
        moved.run();
    }

    private Optional<Integer> place() {
        for (int i = 0; i < shown.size(); i++) {
            if (chosen.isPresent() && shown.get(i).file().equals(chosen.get())) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The session that the person is at. */
    Optional<SessionEntry> chosen() {
        return place().map(shown::get);
    }

    /** Those that are marked, in order. */
    List<Path> marked() {
        return List.copyOf(marked);
    }

    boolean isMarked(SessionEntry entry) {
        return marked.contains(entry.file());
    }

    /** Marks the chosen one, or takes its mark away. */
    void mark() {
        chosen().filter(entry -> entry.head().isPresent()).ifPresent(entry -> {
            if (!marked.remove(entry.file())) {
                marked.add(entry.file());
            }
            show();
        });
    }

    /** Only the sessions of the chosen one's serial number; all again where they are shown alone already. */
    void history() {
        chosen().flatMap(SessionEntry::head).ifPresent(head -> {
            String serial = head.unitSerial().isEmpty() ? head.unitName() : head.unitSerial();
            search.setText(search.getText().equals(serial) ? "" : serial);
        });
    }

    /** Marks the first and the last session of the chosen one's unit: as found and as left. */
    boolean pair() {
        List<SessionEntry> mine = chosen().flatMap(SessionEntry::head)
                .map(head -> all.stream()
                        .filter(one -> one.head().isPresent() && sameUnit(one, head))
                        .toList())
                .orElse(List.of());
        if (mine.size() < 2) {
            return false;
        }
        marked.clear();
        marked.add(mine.get(mine.size() - 1).file());
        marked.add(mine.get(0).file());
        show();
        return true;
    }

    private static boolean sameUnit(SessionEntry one, railwitness.logger.recording.store.SessionHead head) {
        var other = one.head().orElseThrow();
        return other.unitSerial().equals(head.unitSerial())
                && (!head.unitSerial().isEmpty() || other.unitName().equals(head.unitName()));
    }

    void unmarkAll() {
        marked.clear();
        show();
    }

    /** How many broke off. */
    long interrupted() {
        return all.stream()
                .filter(entry -> entry.head().isPresent() && entry.state() == SessionState.INTERRUPTED)
                .count();
    }
}
