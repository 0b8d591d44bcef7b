package railwitness.logger.ui.screen.window;

import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.KeyboardFocusManager;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.sheet.SheetKind;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.power.PowerState;

/** The one window. It looks at the desk thirty times a second and shows what has changed. */
public final class Window {
    private static final int FRAME_MILLIS = 33;
    private static final int LEAST_WIDTH = 1024;
    private static final int LEAST_HEIGHT = 700;

    private final WindowModel desk;
    private final JFrame frame = new JFrame(Words.of("window.title"));
    private final StateBand band = new StateBand(this::switchOff);
    private final Foot foot = new Foot(this::focusStage);
    private final CardLayout cards = new CardLayout();
    private final JPanel faces = new JPanel(cards);
    private final List<Stage> stages;
    private final List<Tab> tabs = new ArrayList<>();
    private final Timer timer = new Timer(FRAME_MILLIS, e -> moment());
    private final KeyWatch keys = new KeyWatch(this::switchOff, this::key);
    private Stage present;
    private Theme theme;
    private Optional<LiveRun> seenOver = Optional.empty();
    private boolean closing;
    private boolean unconfirmed;

    public Window(WindowModel desk, Theme theme) {
        this.desk = desk;
        this.theme = theme;
        this.stages = new Stages(desk, foot, this::enter).all();
        this.present = stages.get(0);
        build();
        desk.watch(this::moment);
    }

    private void build() {
        Sheet content = new Sheet(
                new MigLayout("insets 0, gap 0, fill, wrap 1", "[grow,fill]", "[]0[]0[grow,fill]0[]"), Palette::paper);
        Sheet row = new Sheet(new MigLayout("insets 0 20 0 20, gap 0", "", "[40!]"), Palette::paper, Sheet.Edge.BOTTOM);
        for (Stage stage : stages) {
            Tab tab = new Tab("tab " + stage.key(), Words.of("tab." + stage.key()), () -> enter(stage.key()));
            tabs.add(tab);
            row.add(tab, "h 40!");
            faces.add(stage.face(), stage.key());
        }
        content.add(band.face(), "growx, wmin 0");
        content.add(row, "growx, wmin 0");
        content.add(faces, "grow, push, hmin 0, wmin 0");
        content.add(foot.face(), "growx, wmin 0");
        frame.setContentPane(content);
        frame.setName("railwitness");
        frame.setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
        frame.setSize(Look.px(1280), Look.px(800));
        frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
        frame.addWindowListener(new WindowAdapter() {
            @Override
            public void windowClosing(WindowEvent e) {
                close();
            }

            @Override
            public void windowClosed(WindowEvent e) {
                timer.stop();
                KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(keys);
            }
        });
    }

    public JFrame frame() {
        return frame;
    }

    public WindowModel desk() {
        return desk;
    }

    /** Opens it; to be called on the event thread. */
    public void open() {
        KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(keys);
        enter(present.key());
        frame.setVisible(true);
        timer.start();
        focusStage();
    }

    /**
     * Offers sessions whose recording broke off.
     *
     * @param except on its way to be looked at anyhow
     */
    void offerInterrupted(Optional<Path> except) {
        new Interrupted(desk, foot, () -> enter("findings")).offer(except);
    }

    /** Enters the stage of this key, or says why it cannot be entered yet. */
    public void enter(String key) {
        Stage wanted = stage(key);
        Optional<String> closed = wanted.closed();
        if (closed.isPresent()) {
            desk.message(closed.get());
            return;
        }
        desk.message("");
        present = wanted;
        cards.show(faces, key);
        wanted.entered();
        moment();
        if (!foot.asking()) {
            focusStage();
        }
    }

    Stage stage(String key) {
        return stages.stream()
                .filter(stage -> stage.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    public String present() {
        return present.key();
    }

    private void focusStage() {
        if (present != null) {
            present.face().requestFocusInWindow();
            FirstFocus.in(present.face());
        }
    }

    private void moment() {
        desk.look();
        band.show(BandWords.now(desk));
        notConfirmed();
        for (int i = 0; i < stages.size(); i++) {
            tabs.get(i).state(stages.get(i) == present, stages.get(i).closed().orElse(""));
        }
        present.moment();
        foot.line().show(line());
        runOver();
    }

    /** What stands at the bottom now. */
    StatusLine line() {
        StatusLine line = present.line();
        return desk.message().isEmpty()
                ? line
                : new StatusLine(desk.message(), line.head(), line.progress(), line.acts());
    }

    /** A person who must go to the disconnect is asked wherever they looked. */
    private void notConfirmed() {
        boolean now = desk.running()
                && desk.view()
                        .filter(view -> view.power() == PowerState.NOT_CONFIRMED)
                        .isPresent();
        if (now && !unconfirmed && !present.key().equals("run")) {
            unconfirmed = true;
            enter("run");
        }
        unconfirmed = now;
    }

    /** Once a run is over its session is opened, or the window closed where that was asked for. */
    private void runOver() {
        Optional<LiveRun> run = desk.run();
        if (run.isEmpty() || !run.get().over() || run.equals(seenOver)) {
            return;
        }
        seenOver = run;
        if (desk.message().equals(Words.of("off.sent"))) {
            desk.message("");
        }
        if (closing) {
            shut();
        } else {
            desk.open(run.get().file(), this::moment);
        }
    }

    private boolean key(KeyStroke stroke) {
        if (!frame.isActive()) {
            return false;
        }
        for (int i = 0; i < stages.size(); i++) {
            if (stroke.equals(KeyStroke.getKeyStroke("control " + (i + 1)))) {
                enter(stages.get(i).key());
                return true;
            }
        }
        if (stroke.equals(KeyStroke.getKeyStroke("control D"))) {
            theme(theme.other());
            return true;
        }
        if (foot.asking()) {
            return false;
        }
        Optional<Act> act = foot.line().acts().stream()
                .filter(one -> stroke.equals(KeyStroke.getKeyStroke(one.stroke())))
                .findFirst();
        act.ifPresent(one -> one.done().run());
        return act.isPresent();
    }

    /** Another theme, at once. */
    public void theme(Theme wanted) {
        theme = wanted;
        Look.install(wanted);
        band.refresh();
        moment();
    }

    private void switchOff() {
        if (desk.running()) {
            desk.run().orElseThrow().switchOff(Words.of("off.byhand"));
            desk.message(Words.of("off.sent"));
        } else {
            desk.message(Words.of(desk.ports().reset() ? "off.reset" : nothingSent()));
        }
    }

    private String nothingSent() {
        boolean open = desk.view()
                .filter(view -> !view.rehearsal() && view.power() == PowerState.NOT_CONFIRMED)
                .isPresent();
        return open ? "off.open" : "off.nothing";
    }

    private void close() {
        if (!desk.running()) {
            closeIdle();
            return;
        }
        foot.ask(new Question(
                "close",
                Words.of("close.question"),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("close.stay"), typed -> {}),
                        new Question.Answer(Words.of("close.off"), typed -> {
                            closing = true;
                            switchOff();
                        }))));
    }

    /** Without a run only sheets that were not saved are worth a question. */
    private void closeIdle() {
        List<String> unsaved = Arrays.stream(SheetKind.values())
                .filter(desk::unsaved)
                .map(kind -> Words.of("close.unsaved." + kind))
                .toList();
        if (unsaved.isEmpty()) {
            shut();
            return;
        }
        foot.ask(new Question(
                "close",
                Words.of("close.unsaved", String.join(", ", unsaved)),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("close.back"), typed -> {}),
                        new Question.Answer(Words.of("close.lose"), typed -> shut()))));
    }

    private void shut() {
        frame.dispose();
    }
}
