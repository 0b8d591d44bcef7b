package railwitness.logger.ui.screen.bench;

import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Words;

/** What runs the unit: the virtual bench, or the instruments of the bench sheet, each with its form and what it reads. */
public final class BenchStage implements Stage {
    private final WindowModel desk;
    private final Runnable next;
    private final BenchView face = new BenchView();
    private final SourceChoice source;
    private final RuledSheet instruments = new RuledSheet("instruments", InstrumentRows.columns());
    private final BenchEditor editor;
    private final PortsPanel ports;
    private final Watching watching;
    private final PortSearch search;
    private final LeadsGuide guide;
    private boolean going;

    /** @param next goes on to the cautions */
    public BenchStage(WindowModel desk, Asker asker, Runnable next) {
        this.desk = desk;
        this.next = next;
        source = new SourceChoice(desk);
        editor = new BenchEditor(desk, asker, face, this::select);
        watching = new Watching(desk);
        FormAct ask = new FormAct("ask ports", Words.of("act.ports"), "control P", this::scan);
        ports = new PortsPanel(ask, editor::give);
        search = new PortSearch(desk, ports);
        LeadsPanel leads = new LeadsPanel(FormAct.of("close leads", Words.of("leads.close"), this::putLeadsAway));
        guide = new LeadsGuide(desk, asker, watching, leads);
        instruments.onMoved(row -> {
            putLeadsAway();
            editor.choose(row);
        });
        instruments.onChosen(row -> editor.form().focusFirst());
        face.left(source, instruments, editor);
        face.right(ports, editor.form(), leads);
        ask.keyIn(face);
        BenchView.neighbours(instruments, ports.found());
        face.addHierarchyListener(e -> {
            if (!face.isShowing()) {
                letGo();
            }
        });
    }

    @Override
    public String key() {
        return "bench";
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
        going = false;
        // texts that wrap know their height only once they have their width
        SwingUtilities.invokeLater(face::revalidate);
    }

    @Override
    public void moment() {
        source.moment();
        if (editor.follow() && instruments.selected() != editor.chosenRow()) {
            instruments.rows(InstrumentRows.of(editor.said(), watching));
            instruments.select(editor.chosenRow());
        }
        watching.follow();
        guide.moment();
        instruments.rows(InstrumentRows.of(editor.said(), watching));
        ports.moment(editor::owner);
        face.show(editor.good().name(), editor.chosenName(), about());
        if (going && !watching.ending() && !search.on()) {
            going = false;
            next.run();
        }
    }

    /** The whole of what the chosen instrument says, or why it does not. */
    private String about() {
        return editor.chosen().instrument()
                ? watching.seen(editor.chosenName())
                        .map(one -> one.identity().map(Object::toString).orElse(one.why()))
                        .orElse("")
                : "";
    }

    private void select(int row) {
        instruments.rows(InstrumentRows.of(editor.said(), watching));
        instruments.select(row);
        instruments.requestFocusInWindow();
    }

    @Override
    public StatusLine line() {
        if (going) {
            return StatusLine.of(Words.of("bench.closing"), Words.of("bench.closing.next"));
        }
        Act cautions = new Act("next", Words.of("act.cautions"), "control ENTER", true, this::goOn);
        Act check = new Act("leads", Words.of("act.leads"), "control K", false, this::checkLeads);
        Act watch = watching.on()
                ? new Act("unwatch", Words.of("act.unwatch"), "control L", false, watching::end)
                : new Act("watch", Words.of("act.watch"), "control L", false, watching::begin);
        if (!editor.inOrder()) {
            return StatusLine.of(Words.of("bench.faults", editor.faults()), editor.faultElsewhere(), watch, cautions);
        }
        if (search.on()) {
            return StatusLine.of(Words.of("bench.asking"), Words.of("bench.asking.next"), cautions);
        }
        if (guide.on()) {
            return StatusLine.of(Words.of("leads.line"), Words.of("leads.line.next"), cautions);
        }
        if (watching.on()) {
            return StatusLine.of(watchWords(), Words.of("watch.line.next"), check, watch, cautions);
        }
        String runs = desk.virtualBench() ? "bench.line.virtual" : "bench.line.real";
        return StatusLine.of(Words.of(runs), Words.of("bench.line.next"), check, watch, cautions);
    }

    private String watchWords() {
        return watching.atRest()
                .map(rest ->
                        Words.of(rest.supplySaysOff() ? "watch.line.off" : "watch.line", rest.answering(), rest.all()))
                .orElse("");
    }

    private void checkLeads() {
        face.showLeads(true);
        guide.begin();
    }

    private void putLeadsAway() {
        guide.end();
        face.showLeads(false);
    }

    /** Everything that holds a port ends. */
    private void letGo() {
        guide.end();
        watching.end();
        search.end();
    }

    /** The cautions come once the ports are closed. */
    private void goOn() {
        if (!editor.settle()) {
            desk.message(desk.unfinished().orElse(""));
            editor.form().focusFault();
            return;
        }
        letGo();
        going = true;
    }

    /** Asks every serial port who is there; a watch makes room for it and then goes on. */
    private void scan() {
        if (search.on()) {
            return;
        }
        boolean watched = watching.on();
        search.begin(editor.good(), watching.end(), () -> {
            if (watched && face.isShowing() && !going) {
                watching.begin();
            }
        });
    }
}
