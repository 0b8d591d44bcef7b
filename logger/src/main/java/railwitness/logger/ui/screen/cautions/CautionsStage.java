package railwitness.logger.ui.screen.cautions;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.converter.Fault;
import railwitness.logger.recording.record.BriefingMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.live.LiveRun;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Rehearsal;
import railwitness.logger.ui.screen.stage.SessionNames;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;
import railwitness.safety.caution.Acknowledgement;
import railwitness.safety.caution.Briefing;

/** What stands between a person and power: cautions, checklist, cold resistances, a name. */
public final class CautionsStage implements Stage {
    private final WindowModel desk;
    private final Runnable begun;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 52,fill][grow 48,fill]"));
    private final Sheet left = new Sheet(new MigLayout("insets 14 20 14 20, fill"), Palette::sheet, Sheet.Edge.RIGHT);
    private final Sheet right = new Sheet(new MigLayout("insets 14 18 14 18, fill"), Palette::paper);
    private Sheets shown;
    private Briefing briefing;
    private ChecklistPanel checklist;
    private boolean starting;

    /** @param begun told when a run has begun */
    public CautionsStage(WindowModel desk, Runnable begun) {
        this.desk = desk;
        this.begun = begun;
        face.add(left, "grow, push, w 52%!");
        face.add(right, "grow, push, w 48%!");
    }

    @Override
    public String key() {
        return "cautions";
    }

    @Override
    public JComponent face() {
        return face;
    }

    @Override
    public Optional<String> closed() {
        return desk.running() ? Optional.of(Words.of("closed.running")) : desk.unfinished();
    }

    @Override
    public void entered() {
        if (shown != desk.sheets()) {
            shown = desk.sheets();
            briefing = BriefingMaker.of(shown);
            left.removeAll();
            left.add(Scroll.of(new CautionList(briefing)), "grow, push");
            checklist = new ChecklistPanel(briefing.checklist());
            right.removeAll();
            right.add(Scroll.of(checklist), "grow, push");
        }
    }

    @Override
    public StatusLine line() {
        if (briefing == null) {
            return StatusLine.of("", "");
        }
        if (starting) {
            return StatusLine.of(Words.of("cautions.starting"), "");
        }
        boolean virtual = desk.virtualBench();
        Act power = new Act(
                "power",
                Words.of(virtual ? "act.rehearse" : "act.power"),
                "control ENTER",
                true,
                virtual ? this::rehearse : this::power);
        if (virtual) {
            return StatusLine.of(Words.of("cautions.virtual"), Words.of("cautions.virtual.next"), power);
        }
        List<String> open = new ArrayList<>(checklist.open(briefing));
        if (desk.demo()) {
            open.add(0, Words.of("cautions.example"));
        }
        return open.isEmpty()
                ? StatusLine.of(Words.of("cautions.ready"), Words.of("cautions.ready.next"), power)
                : StatusLine.of(Words.of("cautions.open", open.size()), open.get(0), power);
    }

    private void rehearse() {
        Sheets sheets = desk.sheets();
        Rehearsal wish = desk.rehearsal();
        String name = checklist.person();
        start(SessionNames.fresh(desk.folder(), sheets, true, Instant.now()), file -> desk.starter()
                .rehearsal(
                        sheets,
                        wish.fault().map(code -> Fault.of(code.word())),
                        wish.seed(),
                        wish.pace(),
                        name,
                        desk.leads(),
                        file));
    }

    private void power() {
        if (desk.demo()) {
            desk.message(Words.of("cautions.example"));
            return;
        }
        try {
            Acknowledgement taken = briefing.acknowledge(checklist.person(), Instant.now(), checklist.answers());
            Sheets sheets = desk.sheets();
            start(SessionNames.fresh(desk.folder(), sheets, false, Instant.now()), file -> desk.starter()
                    .onBench(sheets, taken, desk.leads(), file));
        } catch (IllegalArgumentException e) {
            desk.message(e.getMessage());
        }
    }

    /** How a run is begun once its file has a place. */
    private interface Beginning {
        LiveRun in(Path file);
    }

    private void start(Path file, Beginning beginning) {
        if (starting || desk.running()) {
            return;
        }
        starting = true;
        desk.work(
                () -> {
                    desk.ports().clear();
                    Files.createDirectories(file.toAbsolutePath().getParent());
                    return beginning.in(file);
                },
                run -> {
                    starting = false;
                    checklist.clear();
                    desk.run(run);
                    begun.run();
                },
                why -> {
                    starting = false;
                    desk.message(why);
                });
    }
}
