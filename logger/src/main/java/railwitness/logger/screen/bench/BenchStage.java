package railwitness.logger.screen.bench;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javax.swing.ButtonGroup;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.bench.PortScan;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.line.SerialPorts;
import railwitness.drivers.rehearsal.FaultCode;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.Column;
import railwitness.logger.screen.paper.Ink;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Note;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.screen.paper.RuledSheet;
import railwitness.logger.screen.paper.Scroll;
import railwitness.logger.screen.paper.Sheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.stage.Stage;
import railwitness.logger.screen.theme.Palette;
import railwitness.logger.screen.theme.Type;

/** What runs the unit: the virtual bench, or the instruments of the bench sheet with a live value beside each. */
public final class BenchStage implements Stage {
    private static final Duration PATIENCE = Duration.ofMillis(500);

    private final Desk desk;
    private final Runnable next;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 60,fill][grow 40,fill]"));
    private final JRadioButton virtual = new JRadioButton(Words.of("bench.virtual"));
    private final JRadioButton real = new JRadioButton(Words.of("bench.real"));
    private final JComboBox<String> fault = new JComboBox<>();
    private final JComboBox<String> pace = new JComboBox<>();
    private final Label title = Label.of("", Type.TITLE);
    private final RuledSheet instruments = new RuledSheet("instruments", InstrumentRows.columns());
    private final RuledSheet ports = new RuledSheet(
            "ports", List.of(Column.words(Words.of("bench.port")), Column.words(Words.of("bench.answer"))));
    private final Watching watching;
    private boolean scanning;
    private boolean going;

    /** @param next goes on to the cautions */
    public BenchStage(Desk desk, Runnable next) {
        this.desk = desk;
        this.next = next;
        this.watching = new Watching(desk);
        face.addHierarchyListener(e -> {
            if (!face.isShowing()) {
                watching.end();
            }
        });
        ButtonGroup group = new ButtonGroup();
        group.add(virtual);
        group.add(real);
        virtual.setSelected(true);
        virtual.setName("virtual bench");
        real.setName("real bench");
        virtual.addActionListener(e -> desk.virtualBench(true));
        real.addActionListener(e -> desk.virtualBench(false));
        choices();
        face.add(left(), "grow, push, w 60%!");
        face.add(right(), "grow, push, w 40%!");
    }

    private void choices() {
        fault.addItem(Words.of("bench.sound"));
        for (FaultCode code : FaultCode.values()) {
            fault.addItem(code.word());
        }
        fault.setName("fault");
        fault.getAccessibleContext().setAccessibleName(Words.of("bench.fault"));
        fault.addActionListener(e -> desk.rehearsal(desk.rehearsal()
                .withFault(
                        fault.getSelectedIndex() == 0
                                ? Optional.empty()
                                : Optional.of(FaultCode.values()[fault.getSelectedIndex() - 1]))));
        for (int times : Paces.TIMES) {
            pace.addItem(times == 1 ? Words.of("bench.pace.real") : Words.of("bench.pace", times));
        }
        pace.setName("pace");
        pace.getAccessibleContext().setAccessibleName(Words.of("bench.pace.name"));
        pace.addActionListener(
                e -> desk.rehearsal(desk.rehearsal().withPace(Paces.TIMES.get(pace.getSelectedIndex()))));
    }

    private JComponent left() {
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 10 20, gap 0, fill, wrap 1", "[grow,fill]", "[]8[]14[]4[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(Label.of(Words.of("bench.title"), Type.TITLE));
        JPanel choice = new JPanel(new MigLayout("insets 0, gap 14 8, wrap 3", "[][][]"));
        choice.setOpaque(false);
        virtual.setFont(Type.TEXT.font());
        real.setFont(Type.TEXT.font());
        choice.add(virtual);
        choice.add(fault, "w 190!");
        choice.add(pace, "w 190!");
        choice.add(real, "span 3");
        left.add(choice);
        left.add(title, "wmin 0");
        left.add(Scroll.of(instruments), "grow, push");
        return left;
    }

    private JComponent right() {
        Sheet right = new Sheet(
                new MigLayout("insets 14 18 10 18, gap 0, fill, wrap 1", "[grow,fill]", "[]6[]8[grow,fill]"),
                Palette::paper);
        right.add(Label.of(Words.of("bench.ports"), Type.TITLE));
        right.add(Note.muted(Words.of("bench.ports.caption"), Type.TEXT), "growx, wmin 60");
        right.add(Scroll.of(ports), "grow, push");
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
        title.setText(desk.sheets().bench().content().name());
        show();
    }

    private void show() {
        instruments.rows(InstrumentRows.of(desk.sheets().bench().content(), watching));
    }

    @Override
    public void moment() {
        fault.setEnabled(desk.virtualBench());
        pace.setEnabled(desk.virtualBench());
        watching.follow();
        show();
        if (going && !watching.ending()) {
            going = false;
            next.run();
        }
    }

    @Override
    public Line line() {
        if (scanning) {
            return Line.of(Words.of("bench.asking"), Words.of("bench.asking.next"));
        }
        if (going) {
            return Line.of(Words.of("bench.closing"), Words.of("bench.closing.next"));
        }
        Act cautions = new Act("next", Words.of("act.cautions"), "control ENTER", true, this::goOn);
        if (watching.on()) {
            return Line.of(
                    Words.of("watch.line"),
                    Words.of("watch.line.next"),
                    new Act("unwatch", Words.of("act.unwatch"), "control L", false, watching::end),
                    cautions);
        }
        return Line.of(
                Words.of(desk.virtualBench() ? "bench.line.virtual" : "bench.line.real"),
                Words.of("bench.line.next"),
                new Act("ports", Words.of("act.ports"), "control P", false, this::scan),
                new Act("watch", Words.of("act.watch"), "control L", false, watching::begin),
                cautions);
    }

    /** The cautions come once the ports are closed. */
    private void goOn() {
        watching.end();
        going = true;
    }

    /** Asks every serial port who is there. */
    private void scan() {
        scanning = true;
        CompletableFuture<Void> closed = watching.end();
        CompletableFuture<Void> over = new CompletableFuture<>();
        desk.ports().take(() -> {}, over);
        desk.work(
                () -> {
                    try {
                        closed.join();
                        return new PortScan(SerialLine::open, PATIENCE)
                                .scan(SerialPorts.list().stream()
                                        .map(SerialPorts.Port::device)
                                        .toList());
                    } finally {
                        over.complete(null);
                    }
                },
                found -> {
                    scanning = false;
                    ports.rows(
                            found.isEmpty()
                                    ? List.of(
                                            Row.of(List.of(Cell.of(Words.of("bench.noports"), Ink.MUTED), Cell.EMPTY)))
                                    : found.stream().map(BenchStage::port).toList());
                },
                this::failed);
    }

    private static Row port(PortScan.Found found) {
        String answer = found.identity().isEmpty()
                ? found.trouble().isEmpty() ? Words.of("bench.silent") : found.trouble()
                : found.identity();
        return Row.of(
                List.of(Cell.ink(found.port()), Cell.of(answer, found.identity().isEmpty() ? Ink.MUTED : Ink.INK)));
    }

    private void failed(String why) {
        scanning = false;
        desk.message(why);
    }
}
