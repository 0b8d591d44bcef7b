package railwitness.logger.screen.bench;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
    private BenchLook.Looked looked = BenchLook.Looked.NOTHING;
    private boolean working;

    /** @param next goes on to the cautions */
    public BenchStage(Desk desk, Runnable next) {
        this.desk = desk;
        this.next = next;
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
        title.setText(desk.sheets().bench().content().name());
        show();
    }

    private void show() {
        instruments.rows(InstrumentRows.of(desk.sheets().bench().content(), looked));
    }

    @Override
    public void moment() {
        fault.setEnabled(desk.virtualBench());
        pace.setEnabled(desk.virtualBench());
    }

    @Override
    public Line line() {
        if (working) {
            return Line.of(Words.of("bench.asking"), Words.of("bench.asking.next"));
        }
        List<Act> acts = new ArrayList<>();
        acts.add(new Act("ports", Words.of("act.ports"), "control P", false, this::scan));
        acts.add(new Act("look", Words.of("act.look"), "control L", false, this::look));
        acts.add(new Act("next", Words.of("act.cautions"), "control ENTER", true, next));
        return Line.of(
                Words.of(desk.virtualBench() ? "bench.line.virtual" : "bench.line.real"),
                looked.trouble().isEmpty() ? Words.of("bench.line.next") : looked.trouble(),
                acts.toArray(new Act[0]));
    }

    /** Asks every serial port who is there. */
    private void scan() {
        working = true;
        desk.work(
                () -> new PortScan(SerialLine::open, PATIENCE)
                        .scan(SerialPorts.list().stream()
                                .map(SerialPorts.Port::device)
                                .toList()),
                found -> {
                    working = false;
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

    /** Opens the bench, asks every instrument once, closes it again; outputs stay off. */
    private void look() {
        working = true;
        BenchLook look = new BenchLook(desk.sheets(), desk.virtualBench());
        desk.work(
                look::once,
                found -> {
                    working = false;
                    looked = found;
                    show();
                },
                this::failed);
    }

    private void failed(String why) {
        working = false;
        desk.message(why);
    }
}
