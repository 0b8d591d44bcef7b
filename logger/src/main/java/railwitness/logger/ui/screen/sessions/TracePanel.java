package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Rail;
import railwitness.logger.recording.importing.TraceSession;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.ui.screen.stage.SessionNames;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Form;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;

/** How a scope's trace is taken into a session: what it shows, in which band, how good the scope is. */
final class TracePanel extends Readable {
    private static final double MEGA = 1e6;

    private final transient WindowModel desk;
    private final Label file = Label.muted("", Type.TEXT);
    private final Note into = Note.muted("", Type.TEXT);
    private final Form form = new Form();
    private final JComboBox<String> rail;
    private final JTextField band;
    private final JTextField gain;
    private final Mark wrong = new Mark();
    private final Note fault = Note.of("", Type.TEXT);
    private transient Path trace;
    private transient Path session;
    private transient List<String> rails = List.of();

    TracePanel(WindowModel desk) {
        super(new MigLayout("insets 0 0 0 10, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.desk = desk;
        add(Label.of(Words.of("trace.title"), Type.TITLE), "wmin 0");
        add(file, "wmin 0");
        add(into, "growx, wmin 60, gapbottom 6");
        rail = form.choice("trace rail", Words.of("trace.rail"), List.of(), () -> {});
        band = form.field("trace band", Words.of("trace.band"), this::check);
        gain = form.field("trace gain", Words.of("trace.gain"), this::check);
        add(form, "growx, wmin 60");
        fault.setName("trace fault");
        wrong.add(fault, "growx, wmin 60");
        add(wrong, "growx, wmin 60, gaptop 6");
        add(Note.muted(Words.of("trace.hint"), Type.TEXT), "growx, wmin 60, gaptop 6");
    }

    void show(Path wanted, Path chosen) {
        trace = wanted;
        session = chosen;
        file.setText(wanted.toString());
        into.setText(Words.of("trace.into", chosen.getFileName()));
        check();
        desk.work(() -> rails(chosen), this::rails, desk::message);
    }

    private static List<String> rails(Path chosen) {
        try (SessionFile opened = SessionFile.open(chosen)) {
            return TraceSession.design(opened)
                    .map(known -> known.rails().stream().map(Rail::name).toList())
                    .orElse(List.of("plus", "minus"));
        }
    }

    private void rails(List<String> found) {
        rails = found;
        form.fill(() -> {
            rail.removeAllItems();
            found.forEach(name -> rail.addItem(Words.of("trace.ripple", RailNames.full(name))));
            rail.addItem(Words.of("trace.drain"));
            rail.setSelectedIndex(0);
        });
        javax.swing.SwingUtilities.invokeLater(rail::requestFocusInWindow);
    }

    private void check() {
        List<String> faults = new ArrayList<>();
        check(faults, band, "trace.band");
        check(faults, gain, "trace.gain");
        fault.setText(String.join("\n", faults));
        wrong.setVisible(!faults.isEmpty());
        revalidate();
    }

    private static void check(List<String> faults, JTextField field, String key) {
        String typed = field.getText().strip();
        boolean good = typed.isEmpty()
                || Numbers.parsed(typed).isPresent() && Numbers.parsed(typed).getAsDouble() > 0;
        field.putClientProperty("JComponent.outline", good ? null : "error");
        if (!good) {
            faults.add(Words.of("trace.nonumber", Words.of(key), typed));
        }
    }

    boolean good() {
        return !rails.isEmpty() && fault.getText().isEmpty();
    }

    /** What makes the new session; to be called behind the desk, gives the file. */
    WindowModel.Working<Path> taken() {
        int at = rail.getSelectedIndex();
        Optional<String> which = at < rails.size() ? Optional.of(rails.get(at)) : Optional.empty();
        OptionalDouble megahertz = Numbers.parsed(band.getText());
        TraceSession taken = new TraceSession(
                trace,
                which,
                megahertz.isPresent() ? OptionalDouble.of(megahertz.getAsDouble() * MEGA) : megahertz,
                Numbers.parsed(gain.getText()));
        Path from = session;
        String version = desk.starter().programVersion();
        return progress -> {
            Path out = SessionFolder.free(
                    from.toAbsolutePath().getParent(), SessionFolder.stem(from) + "-traced", SessionNames.ENDING);
            taken.beside(from, out, version, progress::at);
            return out;
        };
    }
}
