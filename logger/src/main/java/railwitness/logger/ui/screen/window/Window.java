package railwitness.logger.ui.screen.window;

import java.awt.CardLayout;
import java.awt.Dialog;
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
import railwitness.logger.ui.screen.help.HelpView;
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
    private static final List<KeyStroke> PEDALS = List.of(
            KeyStroke.getKeyStroke("ENTER"), KeyStroke.getKeyStroke("SPACE"), KeyStroke.getKeyStroke("PAGE_DOWN"));
    private static final String HELP = "help";
    private static final String STAGE = "stage";
    private static final List<String> RESUMED = List.of("unit", "bench", "cautions", "sessions");
    private static final int FRAME_MILLIS = 33;
    private static final int LEAST_WIDTH = 1024;
    private static final int LEAST_HEIGHT = 700;
    /** Lower than this, in pixels at 100 %, everything round the stage gives way to it. */
    private static final int CRAMPED = 520;
    /** How large the line at the bottom is then. */
    private static final double CRAMPED_FOOT = 0.8;
    /** At this width of the window, in pixels of the screen, far type has the sizes below. */
    private static final double FAR_WIDTH = 1600;

    private static final double FAR_BAND = 58;

    private static final double FAR_FOOT = 52;

    private final WindowModel desk;
    private final JFrame frame = new JFrame(Words.of("window.title"));
    private final StateBand band = new StateBand(this::switchOff);
    private final Foot foot = new Foot(this::focusStage);
    private Sheet row;
    private boolean far;
    private final CardLayout cards = new CardLayout();
    private final JPanel faces = new JPanel(cards);
    private final List<Stage> stages;
    private final List<Tab> tabs = new ArrayList<>();
    private final Timer timer = new Timer(FRAME_MILLIS, e -> moment());
    private final KeyWatch keys = new KeyWatch(this::escape, this::key);
    private final HelpView manual = new HelpView();
    private Optional<String> helping = Optional.empty();
    private Stage present;
    private Theme theme;
    private Optional<LiveRun> seenOver = Optional.empty();
    private boolean closing;
    private boolean unconfirmed;
    private boolean tripped;

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
                new MigLayout("insets 0, gap 0, fill, wrap 1, hidemode 3", "[grow,fill]", "[]0[]0[grow,fill]0[]"),
                Palette::paper);
        row = new Sheet(new MigLayout("insets 0 20 0 20, gap 0", "", "[]"), Palette::paper, Sheet.Edge.BOTTOM);
        for (Stage stage : stages) {
            Tab tab = new Tab("tab " + stage.key(), Words.of("tab." + stage.key()), () -> enter(stage.key()));
            tabs.add(tab);
            row.add(tab, "h pref!");
            faces.add(stage.face(), stage.key());
        }
        faces.add(manual.face(), HELP);
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

    /**
     * Goes to the stage at which the person left off.
     *
     * @param elsewhere a session is on its way to be looked at instead
     */
    void resume(boolean elsewhere) {
        desk.remembered()
                .get(STAGE)
                .filter(key -> !elsewhere && RESUMED.contains(key))
                .map(this::stage)
                .filter(stage -> stage.closed().isEmpty())
                .ifPresent(stage -> present = stage);
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
        helping = Optional.empty();
        present = wanted;
        cards.show(faces, key);
        if (RESUMED.contains(key)) {
            desk.remembered().put(STAGE, key);
        }
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
        room();
        foot.line().show(line());
        runOver();
    }

    /** Whether what is shown is meant for two metres, and how large it is then. */
    private void room() {
        boolean wanted = present.far() && helping.isEmpty();
        double wide = frame.getContentPane().getWidth() / FAR_WIDTH;
        if (wanted != far) {
            far = wanted;
            row.setVisible(!far);
        }
        boolean cramped = frame.getContentPane().getHeight() < Look.px(CRAMPED);
        tabs.forEach(tab -> tab.cramped(cramped));
        band.grow(far ? Math.max(1, FAR_BAND * wide / Look.px(26)) : 1);
        double usual = cramped ? CRAMPED_FOOT : 1;
        foot.grow(far ? Math.max(usual, FAR_FOOT * wide / Look.px(20)) : usual);
    }

    /** What stands at the bottom now. */
    StatusLine line() {
        if (helping.isPresent()) {
            Act back = new Act("back", Words.of("act.help.back"), "F1", true, this::help);
            return StatusLine.of(helping.get(), Words.of("help.line"), back);
        }
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
        boolean trip =
                desk.running() && desk.view().flatMap(view -> view.trip()).isPresent();
        if (trip && !tripped) {
            desk.sounds().tripped();
        }
        tripped = trip;
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

    /** A dialog of files takes Escape itself while nothing is on; there is none while something may be. */
    private boolean escape() {
        boolean dialog = KeyboardFocusManager.getCurrentKeyboardFocusManager().getActiveWindow() instanceof Dialog;
        if (dialog && !desk.running()) {
            return false;
        }
        switchOff();
        return true;
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
        if (stroke.equals(KeyStroke.getKeyStroke("F1"))) {
            help();
            return true;
        }
        if (stroke.equals(KeyStroke.getKeyStroke("control D"))) {
            theme(theme.other());
            return true;
        }
        if (foot.asking()) {
            return pedal(stroke) && foot.answered();
        }
        Optional<Act> act = foot.line().acts().stream()
                .filter(one -> stroke.equals(KeyStroke.getKeyStroke(one.stroke())))
                .findFirst();
        act.ifPresent(one -> one.done().run());
        return act.isPresent();
    }

    /** Keys that need no hand at the keyboard, and the one that is remembered as the footswitch's. */
    private boolean pedal(KeyStroke stroke) {
        return PEDALS.contains(stroke)
                || desk.remembered()
                        .get("footswitch")
                        .map(KeyStroke::getKeyStroke)
                        .filter(stroke::equals)
                        .isPresent();
    }

    /** The manual's page about what the person is at, or back from it. */
    private void help() {
        if (helping.isPresent()) {
            enter(present.key());
            return;
        }
        helping = Optional.of(manual.show(present.topics()));
        cards.show(faces, HELP);
        manual.face().requestFocusInWindow();
        FirstFocus.in(manual.face());
        moment();
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
                        new Question.Answer(Words.of("close.save"), typed -> saveAndShut()),
                        new Question.Answer(Words.of("close.lose"), typed -> shut()))));
    }

    /** Every changed sheet into the folder of the sessions, beside what is there. */
    private void saveAndShut() {
        Optional<String> faulty = desk.unfinishedSheet();
        if (faulty.isPresent()) {
            desk.message(faulty.get());
            return;
        }
        desk.work(() -> KeptSheets.keep(desk), kept -> shut(), desk::message);
    }

    private void shut() {
        frame.dispose();
    }
}
