package railwitness.logger.ui.screen.unit;

import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.Timer;
import railwitness.analysis.design.Design;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetKeys;
import railwitness.logger.recording.sheet.SheetRemark;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.sheet.SheetsCheck;
import railwitness.logger.ui.screen.form.FieldEditor;
import railwitness.logger.ui.screen.form.FormPart;
import railwitness.logger.ui.screen.form.SheetFiles;
import railwitness.logger.ui.screen.form.SheetForm;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.Words;

/** Design sheet and plan in a form, the text of the person kept underneath, with what they come to beside it. */
public final class UnitStage implements Stage {
    private static final int PAUSE_MILLIS = 250;

    private final WindowModel desk;
    private final Asker asker;
    private final Runnable next;
    private final Runnable sessions;
    private final UnitView face = new UnitView();
    private final SheetForm form = new SheetForm(this::typed);
    private final PredictionPanel prediction = new PredictionPanel();
    private final PlanPanel planned = new PlanPanel();
    private final Timer pause = new Timer(PAUSE_MILLIS, e -> read());
    private final SheetDraft<Design> design;
    private final SheetDraft<Plan> steps;
    private final SheetFiles files;
    private Sheets shown;
    private List<SheetRemark> remarks = List.of();
    private List<SheetFault> elsewhere = List.of();
    private long open;

    /**
     * @param next goes on to the bench
     * @param sessions goes to the recorded sessions
     */
    public UnitStage(WindowModel desk, Asker asker, Runnable next, Runnable sessions) {
        this.sessions = sessions;
        this.desk = desk;
        this.asker = asker;
        this.next = next;
        this.design = SheetDraft.design(desk.sheets().design());
        this.steps = SheetDraft.plan(desk.sheets().plan());
        this.files = new SheetFiles(desk, asker, face);
        pause.setRepeats(false);
        face.fill(form, prediction, planned);
        face.onTurned(this::turned);
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

    /** The other of the two sheets was chosen. */
    private void turned() {
        build();
        mark();
    }

    private SheetDraft<?> draft() {
        return face.onPlan() ? steps : design;
    }

    private void build() {
        form.show(parts());
    }

    private List<FormPart> parts() {
        return face.onPlan()
                ? new PlanParts(steps, this::restructured).parts()
                : new DesignParts(design, this::restructured).parts();
    }

    @Override
    public void moment() {
        if (shown == desk.sheets()) {
            return;
        }
        shown = desk.sheets();
        if (shown.design() != design.good()) {
            design.show(shown.design());
        }
        if (shown.plan() != steps.good()) {
            steps.show(shown.plan());
        }
        build();
        mark();
        face.show(
                shown.design().content().unit().name(),
                Words.of(
                        desk.demo() ? "unit.demo" : "unit.files",
                        shown.design().fileName(),
                        shown.bench().fileName(),
                        shown.plan().fileName()));
        prediction.show(shown.design().content());
        prediction.toroid(shown.wound());
        planned.show(shown);
    }

    private void typed(FieldEditor editor) {
        draft().set(editor.field(), editor.literal());
        pause.restart();
    }

    /** A table has come, gone or moved. */
    private void restructured() {
        pause.stop();
        read();
    }

    /** What was written, read as the sheet's reader reads it. */
    private void read() {
        if (!desk.message().isEmpty()) {
            desk.message("");
        }
        if (draft().read()) {
            desk.sheets(new Sheets(design.good(), desk.sheets().bench(), steps.good()));
        }
        build();
        mark();
    }

    /** Every fault at its field. */
    private void mark() {
        open = design.fields().stream().filter(SheetKeys.Field::open).count();
        remarks = SheetsCheck.of(Optional.of(design.good()), Optional.empty(), Optional.of(steps.good()));
        prediction.look(remarks);
        elsewhere = form.faults(draft().edit(), faults(draft()));
        form.questions(
                draft().edit(),
                remarks.stream()
                        .filter(remark -> !remark.refuses() && remark.kind() == draft().kind())
                        .toList());
        for (SheetDraft<?> one : List.of(design, steps)) {
            desk.unfinished(one.kind(), faults(one).isEmpty() ? "" : Words.of("unfinished." + one.kind()));
            desk.unsaved(one.kind(), one.changed());
        }
        desk.examples(open > 0 ? Words.of("unfinished.open", open) : "");
    }

    /** What its reader found; where that found nothing, what the sheets say that cannot be. */
    private List<SheetFault> faults(SheetDraft<?> sheet) {
        return sheet.faults().isEmpty()
                ? remarks.stream()
                        .filter(remark -> remark.refuses() && remark.kind() == sheet.kind())
                        .map(SheetRemark::fault)
                        .toList()
                : sheet.faults();
    }

    @Override
    public List<String> topics() {
        java.awt.Component owner =
                java.awt.KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
        String name = owner == null || owner.getName() == null ? "" : owner.getName();
        List<String> topics = new java.util.ArrayList<>();
        if (name.startsWith("[limits]") || name.startsWith("[[requirement]]")) {
            topics.add("limit");
        }
        if (open > 0) {
            topics.add("nothing-known");
        }
        topics.add(desk.demo() ? "first-hour" : "stage-unit");
        return topics;
    }

    @Override
    public StatusLine line() {
        Act[] acts = {
            new Act("last", Words.of("act.unit.last"), "control J", false, this::last),
            new Act("new", Words.of("act.unit.new"), "control N", false, this::begin),
            new Act("open", Words.of("act.sheet.open"), "control O", false, files::open),
            new Act("save", Words.of("act.sheet.save"), "control S", false, () -> files.save(draft(), this::kept)),
            new Act("next", Words.of("act.bench"), "control ENTER", true, this::goOn)
        };
        if (desk.demo() && !face.onPlan() && !design.changed()) {
            Act last = new Act("last", Words.of("act.unit.last"), "control J", false, this::last);
            Act look = new Act("look", Words.of("act.unit.look"), "control L", false, sessions);
            Act begun = new Act("new", Words.of("act.unit.prove"), "control N", false, this::begin);
            Act opened = new Act("open", Words.of("act.sheet.open"), "control O", false, files::open);
            Act example = new Act("next", Words.of("act.unit.example"), "control ENTER", true, this::goOn);
            return StatusLine.of(
                    Words.of("unit.first"), Words.of("unit.first.next"), last, look, opened, begun, example);
        }
        String sheet = face.onPlan() ? "unit.plan." : "unit.";
        if (!faults(draft()).isEmpty()) {
            return StatusLine.of(
                    Words.of(sheet + "faults", faults(draft()).size()),
                    elsewhere.isEmpty()
                            ? Words.of("unit.faults.marked")
                            : elsewhere.get(0).toString(),
                    acts);
        }
        if (open > 0 && !face.onPlan()) {
            return StatusLine.of(Words.of("unit.open", open), Words.of("unit.open.next"), acts);
        }
        return StatusLine.of(Words.of(sheet + "good"), Words.of(sheet + "next"), acts);
    }

    private void kept(String fileName) {
        if (face.onPlan()) {
            steps.saved(fileName);
        } else {
            design.saved(fileName);
        }
        desk.sheets(new Sheets(design.good(), desk.sheets().bench(), steps.good()));
    }

    private void goOn() {
        if (pause.isRunning()) {
            pause.stop();
            read();
        }
        if (desk.unfinished().isPresent()) {
            desk.message(desk.unfinished().get());
            form.focusFault();
            if (open > 0 && !face.onPlan()) {
                form.focusFirstOpen();
            }
        } else {
            next.run();
        }
    }

    /** The sheets of the session recorded last, once the person does not mind losing what was not saved. */
    private void last() {
        asking("last job", "unit.last.question", this::takeLast);
    }

    private void takeLast() {
        desk.work(
                () -> LastJob.in(desk.folder()),
                found -> found.ifPresentOrElse(
                        sheets -> {
                            face.turnToUnit();
                            desk.sheets(sheets);
                            desk.message(Words.of("unit.last.taken"));
                        },
                        () -> desk.message(Words.of("unit.last.none"))),
                desk::message);
    }

    private void asking(String key, String question, Runnable then) {
        if (!design.changed()) {
            then.run();
            return;
        }
        asker.ask(new Question(
                key,
                Words.of(question),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("unit.new.no"), typed -> {}),
                        new Question.Answer(Words.of("unit.new.yes"), typed -> then.run()))));
    }

    /** A new unit, once the person does not mind losing what was not saved. */
    private void begin() {
        asking("new unit", "unit.new.question", this::blank);
    }

    private void blank() {
        pause.stop();
        face.turnToUnit();
        desk.sheets(new Sheets(
                Sheets.newDesign(), desk.sheets().bench(), desk.sheets().plan()));
        form.focusFirstOpen();
    }
}
