package railwitness.logger.ui.screen.bench;

import java.util.Optional;
import javax.swing.ButtonGroup;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JRadioButton;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.converter.FaultCode;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Words;

/** What runs the unit: the virtual bench, with what is wrong with its unit and how fast it goes, or real instruments. */
final class SourceChoice extends JPanel {
    private final transient WindowModel desk;
    private final JRadioButton virtual = new JRadioButton(Words.of("bench.virtual"), true);
    private final JRadioButton real = new JRadioButton(Words.of("bench.real"));
    private final JComboBox<String> fault = new JComboBox<>();
    private final JComboBox<String> pace = new JComboBox<>();

    SourceChoice(WindowModel desk) {
        super(new MigLayout("insets 0, gap 0 8, wrap 1, fillx", "[grow,fill]"));
        this.desk = desk;
        setOpaque(false);
        ButtonGroup group = new ButtonGroup();
        group.add(virtual);
        group.add(real);
        virtual.setName("virtual bench");
        real.setName("real bench");
        virtual.addActionListener(e -> desk.virtualBench(true));
        real.addActionListener(e -> desk.virtualBench(false));
        virtual.setFont(Type.TEXT.font());
        real.setFont(Type.TEXT.font());
        faults();
        paces();
        add(new FlowRow(14, virtual, fault, pace), "growx, wmin 0");
        add(new FlowRow(14, real), "growx, wmin 0");
    }

    private void faults() {
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
    }

    private void paces() {
        for (int times : Paces.TIMES) {
            pace.addItem(times == 1 ? Words.of("bench.pace.real") : Words.of("bench.pace", times));
        }
        pace.setName("pace");
        pace.getAccessibleContext().setAccessibleName(Words.of("bench.pace.name"));
        pace.addActionListener(
                e -> desk.rehearsal(desk.rehearsal().withPace(Paces.TIMES.get(pace.getSelectedIndex()))));
    }

    /** As the desk says now. */
    void moment() {
        boolean rehearsing = desk.virtualBench();
        (rehearsing ? virtual : real).setSelected(true);
        fault.setEnabled(rehearsing);
        pace.setEnabled(rehearsing);
    }
}
