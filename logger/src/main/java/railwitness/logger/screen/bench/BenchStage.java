package railwitness.logger.screen.bench;

import java.awt.CardLayout;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.PortScan;
import railwitness.drivers.bench.Seen;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.screen.form.FieldEditor;
import railwitness.logger.screen.form.FormAct;
import railwitness.logger.screen.form.SheetFiles;
import railwitness.logger.screen.form.SheetForm;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Note;
import railwitness.logger.screen.paper.RuledSheet;
import railwitness.logger.screen.paper.Scroll;
import railwitness.logger.screen.paper.Sheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Asker;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.sheet.SheetDraft;
import railwitness.logger.sheet.SheetEdit;
import railwitness.logger.sheet.Sheets;

/** What runs the unit: the virtual bench, or the instruments of the bench sheet, each with its form and what it reads. */
public final class BenchStage implements Stage {
    private static final int PAUSE_MILLIS = 250;
    private static final int USUAL_BAUD = 9600;

    private final Desk desk;
    private final Runnable next;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 56,fill][grow 44,fill]"));
    private final SourceChoice source;
    private final Label title = Label.of("", Type.TITLE);
    private final RuledSheet instruments = new RuledSheet("instruments", InstrumentRows.columns());
    private final PortsPanel ports;
    private final Label chosenTitle = Label.of("", Type.TITLE);
    private final Note about = Note.muted("", Type.CAPTION);
    private final SheetForm form = new SheetForm(this::typed);
    private final Timer pause = new Timer(PAUSE_MILLIS, e -> read());
    private final SheetDraft<BenchSheet> draft;
    private final SheetFiles files;
    private final Watching watching;
    private final PortSearch search;
    private final LeadsPanel leads;
    private final LeadsGuide guide;
    private final CardLayout cards = new CardLayout();
    private final JPanel beside = new JPanel(cards);
    private Sheets shown;
    private List<InstrumentRows.Said> said = List.of();
    private BenchPlace chosen = new BenchPlace(BenchPlace.BENCH, 0);
    private List<SheetFault> elsewhere = List.of();
    private boolean going;

    /** @param next goes on to the cautions */
    public BenchStage(Desk desk, Asker asker, Runnable next) {
        this.desk = desk;
        this.next = next;
        this.source = new SourceChoice(desk);
        this.draft = SheetDraft.bench(desk.sheets().bench());
        this.files = new SheetFiles(desk, asker, face);
        this.watching = new Watching(desk);
        this.ports =
                new PortsPanel(new FormAct("ask ports", Words.of("act.ports"), "control P", this::scan), this::give);
        this.search = new PortSearch(desk, ports);
        this.leads = new LeadsPanel(FormAct.of("close leads", Words.of("leads.close"), this::putLeadsAway));
        this.guide = new LeadsGuide(desk, asker, watching, leads);
        pause.setRepeats(false);
        instruments.onMoved(this::choose);
        instruments.onChosen(row -> form.focusFirst());
        step(instruments, "RIGHT", ports.found());
        step(ports.found(), "LEFT", instruments);
        face.add(left(), "grow, push, w 56%!");
        beside.setOpaque(false);
        beside.add(right(), "form");
        Sheet found = new Sheet(new MigLayout("insets 14 18 0 12, fill"), Palette::paper);
        found.add(Scroll.of(leads), "grow, push");
        beside.add(found, "leads");
        face.add(beside, "grow, push, w 44%!");
        face.addHierarchyListener(e -> {
            if (!face.isShowing()) {
                guide.end();
                watching.end();
                search.end();
            }
        });
    }

    /** A key that goes from one list to the other. */
    private static void step(JComponent from, String stroke, JComponent to) {
        FormAct.of("to " + to.getName(), "", to::requestFocusInWindow)
                .keyed(stroke)
                .keyIn(from);
    }

    private Sheet left() {
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 10 20, gap 0, fill, wrap 1", "[grow,fill]", "[]8[]14[]4[grow,fill]8[]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(Label.of(Words.of("bench.title"), Type.TITLE));
        left.add(source, "wmin 0");
        JPanel head = row("[grow,fill][][]");
        head.add(title, "wmin 0");
        buttons(
                head,
                new FormAct("open sheet", Words.of("act.sheet.open.short"), "control O", files::open),
                new FormAct("save sheet", Words.of("act.sheet.save"), "control S", this::save));
        left.add(head, "wmin 0");
        left.add(Scroll.of(instruments), "grow, push, hmin 0");
        JPanel acts = row("[][][]");
        buttons(
                acts,
                new FormAct(
                        "add instrument",
                        Words.of("bench.add.instrument"),
                        "control I",
                        () -> add(
                                BenchPlace.INSTRUMENT,
                                "name = \"new meter\"\nkind = \"meter\"\nport = \"\"\nreads = \"\"")),
                new FormAct(
                        "add by hand",
                        Words.of("bench.add.byhand"),
                        "control M",
                        () -> add(BenchPlace.BY_HAND, "name = \"meter in hand\"\nreads = \"\"")),
                new FormAct("take out", Words.of("form.takeout"), "control DELETE", this::takeOut));
        left.add(acts, "wmin 0");
        return left;
    }

    private void buttons(JPanel row, FormAct... acts) {
        for (FormAct act : acts) {
            row.add(act.button());
            act.keyIn(face);
        }
    }

    private static JPanel row(String columns) {
        JPanel row = new JPanel(new MigLayout("insets 0, gap 6", columns));
        row.setOpaque(false);
        return row;
    }

    private Sheet right() {
        Sheet right = new Sheet(
                new MigLayout(
                        "insets 14 18 0 12, gap 0, fill, wrap 1, hidemode 3",
                        "[grow,fill]",
                        "[pref!]14[pref!]0[pref!]4[grow,fill]"),
                Palette::paper);
        new FormAct("ask ports", "", "control P", this::scan).keyIn(face);
        chosenTitle.setName("chosen");
        about.setName("about");
        right.add(ports, "wmin 0");
        right.add(chosenTitle, "wmin 0");
        right.add(about, "growx, wmin 60");
        right.add(Scroll.of(form), "grow, push, hmin 0");
        return right;
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
    }

    @Override
    public void moment() {
        source.moment();
        if (shown != desk.sheets()) {
            shown = desk.sheets();
            if (shown.bench() != draft.good()) {
                draft.show(shown.bench());
                choose(new BenchPlace(BenchPlace.BENCH, 0));
            }
            title.setText(draft.good().content().name());
            build();
        }
        watching.follow();
        guide.moment();
        instruments.rows(InstrumentRows.of(said, watching));
        ports.moment(this::owner);
        about.setText(aboutChosen());
        about.setVisible(!about.getText().isEmpty());
        if (going && !watching.ending() && !search.on()) {
            going = false;
            next.run();
        }
    }

    /** The whole of what the chosen instrument says, or why it does not. */
    private String aboutChosen() {
        Optional<Seen> seen = chosen.instrument() ? watching.seen(chosenTitle.getText()) : Optional.empty();
        return seen.map(one -> one.identity().map(Object::toString).orElse(one.why()))
                .orElse("");
    }

    private String owner(String port) {
        return said.stream()
                .filter(one -> one.place().instrument() && one.port().equals(port))
                .map(InstrumentRows.Said::name)
                .findFirst()
                .orElse("");
    }

    private void choose(int row) {
        if (row >= 0 && row < said.size()) {
            chosen = said.get(row).place();
            putLeadsAway();
            build();
        }
    }

    /** The form of what is chosen, and every fault at its field. */
    private void build() {
        said = InstrumentRows.said(draft);
        chosenTitle.setText(InstrumentRows.name(chosen, draft.edit()));
        form.show(BenchParts.of(draft, chosen, desk.sheets().design().content()));
        elsewhere = form.faults(draft.edit(), draft.faults());
        desk.unfinished(draft.kind(), draft.faults().isEmpty() ? "" : Words.of("unfinished." + draft.kind()));
    }

    private void typed(FieldEditor editor) {
        draft.set(editor.field(), editor.literal());
        pause.restart();
    }

    private void read() {
        pause.stop();
        if (draft.read()) {
            desk.sheets(new Sheets(
                    desk.sheets().design(), draft.good(), desk.sheets().plan()));
        }
        build();
    }

    private void add(String header, String body) {
        draft.set(draft.edit().add(header, body));
        choose(new BenchPlace(header, draft.edit().count(header) - 1));
        read();
        form.focusFirst();
    }

    private void takeOut() {
        if (chosen.whole()) {
            desk.message(Words.of("bench.takeout.choose"));
            return;
        }
        draft.set(draft.edit().takeOut(chosen.header(), chosen.place()));
        choose(new BenchPlace(BenchPlace.BENCH, 0));
        read();
        instruments.requestFocusInWindow();
    }

    private void choose(BenchPlace place) {
        chosen = place;
        said = InstrumentRows.said(draft);
        instruments.rows(InstrumentRows.of(said, watching));
        instruments.select(BenchPlace.of(draft.edit()).indexOf(place));
    }

    /** The port becomes that of the chosen instrument, at the speed at which it answered. */
    private void give(PortScan.Found found) {
        if (!chosen.instrument()) {
            desk.message(Words.of("bench.give.choose"));
            return;
        }
        SheetEdit sheet = draft.edit().set(chosen.header(), chosen.place(), "port", "\"" + found.port() + "\"");
        found.settings().ifPresent(settings -> {
            boolean stated =
                    !sheet.literal(chosen.header(), chosen.place(), "baud").isEmpty();
            if (stated || settings.baud() != USUAL_BAUD) {
                sheet.set(chosen.header(), chosen.place(), "baud", String.valueOf(settings.baud()));
            }
        });
        draft.set(sheet);
        read();
        desk.message("");
        instruments.requestFocusInWindow();
    }

    private void save() {
        files.save(draft, fileName -> {
            draft.named(fileName);
            desk.sheets(new Sheets(
                    desk.sheets().design(), draft.good(), desk.sheets().plan()));
        });
    }

    @Override
    public Line line() {
        if (going) {
            return Line.of(Words.of("bench.closing"), Words.of("bench.closing.next"));
        }
        Act cautions = new Act("next", Words.of("act.cautions"), "control ENTER", true, this::goOn);
        Act watch = watching.on()
                ? new Act("unwatch", Words.of("act.unwatch"), "control L", false, watching::end)
                : new Act("watch", Words.of("act.watch"), "control L", false, watching::begin);
        if (!draft.faults().isEmpty()) {
            return Line.of(
                    Words.of("bench.faults", draft.faults().size()),
                    elsewhere.isEmpty() ? Words.of("unit.faults.marked") : faultWords(elsewhere.get(0)),
                    watch,
                    cautions);
        }
        if (search.on()) {
            return Line.of(Words.of("bench.asking"), Words.of("bench.asking.next"), cautions);
        }
        Act check = new Act("leads", Words.of("act.leads"), "control K", false, this::checkLeads);
        if (guide.on()) {
            return Line.of(Words.of("leads.line"), Words.of("leads.line.next"), cautions);
        }
        if (watching.on()) {
            return Line.of(Words.of("watch.line"), Words.of("watch.line.next"), check, watch, cautions);
        }
        return Line.of(
                Words.of(desk.virtualBench() ? "bench.line.virtual" : "bench.line.real"),
                Words.of("bench.line.next"),
                check,
                watch,
                cautions);
    }

    /** A fault of something that is not chosen, with its name. */
    private String faultWords(SheetFault fault) {
        SheetEdit sheet = draft.edit();
        return said.stream()
                .filter(one -> sheet.holds(one.place().header(), one.place().place(), fault.line()))
                .findFirst()
                .map(one -> one.name() + ": " + fault.text().replaceFirst("^\\[+\\w+\\]+ ", ""))
                .orElse(fault.toString());
    }

    /** The check of the leads begins, or begins anew. */
    private void checkLeads() {
        cards.show(beside, "leads");
        guide.begin();
    }

    private void putLeadsAway() {
        guide.end();
        cards.show(beside, "form");
    }

    /** The cautions come once the ports are closed. */
    private void goOn() {
        if (pause.isRunning()) {
            read();
        }
        if (!draft.faults().isEmpty()) {
            desk.message(Words.of("unfinished." + draft.kind()));
            form.focusFault();
            return;
        }
        guide.end();
        watching.end();
        search.end();
        going = true;
    }

    /** Asks every serial port who is there; a watch makes room for it and then goes on. */
    private void scan() {
        if (search.on()) {
            return;
        }
        boolean watched = watching.on();
        search.begin(draft.good().content(), watching.end(), () -> {
            if (watched && face.isShowing() && !going) {
                watching.begin();
            }
        });
        ports.found().requestFocusInWindow();
    }
}
