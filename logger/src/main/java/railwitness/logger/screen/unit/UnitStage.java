package railwitness.logger.screen.unit;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JPanel;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Design;
import railwitness.drivers.sheet.SheetException;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Scroll;
import railwitness.logger.screen.paper.Sheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.sheet.SheetEdit;
import railwitness.logger.sheet.SheetKind;
import railwitness.logger.sheet.SheetText;
import railwitness.logger.sheet.Sheets;

/** The design sheet in a form, the text of the person kept underneath, with what it predicts beside it. */
public final class UnitStage implements Stage {
    private static final int PAUSE_MILLIS = 250;

    private final Desk desk;
    private final Runnable next;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
    private final Label title = Label.of("", Type.TITLE);
    private final Label caption = Label.muted("", Type.TEXT);
    private final UnitForm form = new UnitForm(this::typed);
    private final PredictionPanel prediction = new PredictionPanel();
    private final Timer pause = new Timer(PAUSE_MILLIS, e -> read());
    private SheetText<Design> shown;
    private String text = "";
    private List<String> faults = List.of();
    private int marked;

    /** @param next goes on to the bench */
    public UnitStage(Desk desk, Runnable next) {
        this.desk = desk;
        this.next = next;
        pause.setRepeats(false);
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 0 20, gap 0, fill, wrap 1", "[grow,fill]", "[][]8[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(title, "wmin 0");
        left.add(caption, "wmin 0");
        left.add(Scroll.of(form), "grow, push");
        Sheet right = new Sheet(new MigLayout("insets 14 18 8 12, fill"), Palette::paper);
        right.add(Scroll.of(prediction), "grow, push");
        face.add(left, "grow, push, w 56%!");
        face.add(right, "grow, push, w 44%!");
    }

    @Override
    public String key() {
        return "unit";
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
    public void moment() {
        if (shown != desk.sheets().design()) {
            shown = desk.sheets().design();
            if (!shown.text().equals(text)) {
                text = shown.text();
                form.show(text);
            }
            title.setText(shown.content().unit().name());
            caption.setText(Words.of(
                    desk.demo() ? "unit.demo" : "unit.files",
                    shown.fileName(),
                    desk.sheets().bench().fileName(),
                    desk.sheets().plan().fileName()));
            prediction.show(shown.content());
        }
    }

    private void typed(FormRow row) {
        var field = row.field();
        text = new SheetEdit(text)
                .set(field.note().table(), field.place(), field.note().key(), row.literal())
                .text();
        pause.restart();
    }

    /** What was typed, read as the sheet's reader reads it. */
    private void read() {
        try {
            SheetText<Design> design = Sheets.design(desk.sheets().design().fileName(), text);
            faults = form.faults(text, List.of());
            marked = 0;
            desk.sheets(new Sheets(design, desk.sheets().bench(), desk.sheets().plan()));
        } catch (SheetException e) {
            List<SheetFault> found = e.faults();
            marked = found.size();
            faults = form.faults(text, found);
        }
        form.revalidate();
    }

    @Override
    public Line line() {
        Act open = new Act("open", Words.of("act.sheet.open"), "control O", false, this::open);
        Act save = new Act("save", Words.of("act.sheet.save"), "control S", false, this::save);
        Act on = new Act("next", Words.of("act.bench"), "control ENTER", true, this::goOn);
        if (marked > 0) {
            return Line.of(
                    Words.of("unit.faults", marked),
                    faults.isEmpty() ? Words.of("unit.faults.marked") : faults.get(0),
                    open,
                    save,
                    on);
        }
        return Line.of(Words.of("unit.good"), Words.of("unit.next"), open, save, on);
    }

    private void goOn() {
        if (pause.isRunning()) {
            pause.stop();
            read();
        }
        if (marked > 0) {
            desk.message(Words.of("unit.faults.first"));
        } else {
            next.run();
        }
    }

    private void open() {
        JFileChooser chooser = new JFileChooser(desk.folder().toFile());
        chooser.setDialogTitle(Words.of("act.sheet.open"));
        if (chooser.showOpenDialog(face) == JFileChooser.APPROVE_OPTION) {
            Path file = chooser.getSelectedFile().toPath();
            Sheets now = desk.sheets();
            desk.work(() -> with(now, file), desk::sheets, desk::message);
        }
    }

    /** The sheets with one of them replaced, whichever kind the file is. */
    private static Sheets with(Sheets now, Path file) {
        return switch (SheetKind.check(file)) {
            case DESIGN -> new Sheets(Sheets.design(file), now.bench(), now.plan());
            case BENCH -> new Sheets(now.design(), Sheets.bench(file), now.plan());
            case PLAN -> new Sheets(now.design(), now.bench(), Sheets.plan(file));
        };
    }

    private void save() {
        JFileChooser chooser = new JFileChooser(desk.folder().toFile());
        chooser.setDialogTitle(Words.of("act.sheet.save"));
        chooser.setSelectedFile(
                desk.folder().resolve(desk.sheets().design().fileName()).toFile());
        if (chooser.showSaveDialog(face) == JFileChooser.APPROVE_OPTION) {
            Path file = chooser.getSelectedFile().toPath();
            String kept = text;
            desk.work(
                    () -> {
                        Files.createDirectories(file.toAbsolutePath().getParent());
                        return Files.writeString(file, kept);
                    },
                    path -> desk.message(Words.of("unit.saved", path)),
                    desk::message);
        }
    }
}
