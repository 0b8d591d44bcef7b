package railwitness.logger.ui.screen.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.bench.PortScan;
import railwitness.logger.ui.screen.form.FormAct;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Words;

/** The serial ports of the computer and who answers on them; Enter gives one to the instrument that is chosen. */
final class PortsPanel extends JPanel {
    private final RuledSheet list = new RuledSheet(
            "ports",
            List.of(
                    Column.words(Words.of("bench.port")),
                    Column.words(Words.of("bench.answer")),
                    Column.words(Words.of("bench.given"))));
    private final Note caption = Note.muted(Words.of("bench.ports.caption"), Type.CAPTION);
    private final JScrollPane view = Scroll.of(list);
    private final transient Map<String, Optional<PortScan.Found>> answers = new LinkedHashMap<>();

    /**
     * @param ask asks all ports
     * @param given told the port that is to be the chosen instrument's
     */
    PortsPanel(FormAct ask, Consumer<PortScan.Found> given) {
        super(new MigLayout("insets 0, gap 0 4, fillx, wrap 2, hidemode 3", "[grow,fill][]", "[][][0:pref:170]"));
        setOpaque(false);
        add(new FlowRow(10, Label.of(Words.of("bench.ports"), Type.HEADING), ask.button()), "span 2, growx, wmin 0");
        add(caption, "span 2, growx, wmin 60");
        view.setVisible(false);
        add(view, "span 2, growx, hmin 0");
        list.onChosen(row -> {
            String port = list.rows().get(row).cells().get(0).text();
            given.accept(answers.get(port).orElse(PortScan.Found.silent(port)));
        });
    }

    RuledSheet found() {
        return list;
    }

    /** These ports are being asked; none is no port at all. */
    void asking(List<String> ports) {
        answers.clear();
        ports.forEach(port -> answers.put(port, Optional.empty()));
        view.setVisible(!ports.isEmpty());
        list.requestFocusInWindow();
        caption.setText(Words.of(ports.isEmpty() ? "bench.noports" : "bench.ports.give"));
        revalidate();
    }

    void answered(PortScan.Found one) {
        answers.put(one.port(), Optional.of(one));
    }

    /** @param owner the instrument to which a port is given; empty where none */
    void moment(UnaryOperator<String> owner) {
        List<Row> rows = new ArrayList<>();
        answers.forEach((port, answer) -> rows.add(Row.of(List.of(
                Cell.ink(port),
                answer.map(PortsPanel::words).orElse(Cell.of(Words.of("watch.asking"), Ink.MUTED)),
                Cell.of(owner.apply(port), Ink.MUTED)))));
        boolean grown = rows.size() != list.rows().size();
        list.rows(rows);
        if (grown) {
            revalidate();
            list.requestFocusInWindow();
        }
    }

    private static Cell words(PortScan.Found one) {
        if (!one.identity().isEmpty()) {
            return Cell.ink(one.identity());
        }
        return Cell.of(one.trouble().isEmpty() ? Words.of("bench.silent") : one.trouble(), Ink.MUTED);
    }
}
