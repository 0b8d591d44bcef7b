package railwitness.logger.ui.screen.burnin;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.findings.BurnIn;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Filling;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** The burn-in page: graphs to the left, what is known so far to the right. A session is read on a thread of its own. */
public final class BurnInPanel {
    private static final long OFTEN_NANOS = TimeUnit.SECONDS.toNanos(15);

    private final WindowModel desk;
    private final BurnInGraph graph = new BurnInGraph();
    private final Sheet face = new Sheet(
            new MigLayout("insets 14 20 10 20, gap 18 0, fill", "[grow,fill][fill]", "[grow,fill]"), Palette::sheet);
    private final Readable words =
            new Readable(new MigLayout("insets 4, gap 8 9, wrap 1, fillx, hidemode 3", "[grow,fill]", ""));
    private Path file;
    private long readNanos;
    private boolean reading;
    private boolean knownWellEnough;

    public BurnInPanel(WindowModel desk) {
        this.desk = desk;
        words.setName("burn-in words");
        words.reachable(Words.of("burnin.words"));
        face.setName("burn-in page");
        Filling whole = new Filling(graph);
        whole.reachable(Words.of("act.burnin"));
        face.add(Scroll.of(whole), "grow, push, wmin 200, hmin 0");
        face.add(Scroll.of(words), "grow, w 28%!");
    }

    public JComponent face() {
        return face;
    }

    /** Shows a session, or nothing. */
    public void open(Optional<Path> wanted) {
        if (!wanted.equals(Optional.ofNullable(file))) {
            file = wanted.orElse(null);
            show(Optional.empty());
            readNanos = 0;
        }
    }

    /** Reads a running session again from time to time. */
    public void moment() {
        long now = System.nanoTime();
        if (file == null || reading || readNanos != 0 && now - readNanos < OFTEN_NANOS) {
            return;
        }
        Path asked = file;
        reading = true;
        readNanos = now;
        desk.work(
                () -> BurnIn.of(asked),
                found -> {
                    reading = false;
                    if (asked.equals(file)) {
                        show(found);
                    }
                },
                trouble -> reading = false);
    }

    /** Whether what is foretold is known well enough to end the hold before its time. */
    public boolean mayEnd() {
        return knownWellEnough;
    }

    private void show(Optional<BurnIn> found) {
        knownWellEnough = found.filter(BurnIn::knownWellEnough).isPresent();
        graph.show(found);
        words.removeAll();
        if (found.isEmpty()) {
            words.add(Note.muted(Words.of("burnin.empty"), Type.TEXT), "growx, wmin 40");
        } else {
            told(found.get());
        }
        words.revalidate();
        words.repaint();
    }

    private void told(BurnIn hold) {
        words.add(
                Note.of(Words.of(hold.running() ? "burnin.words" : "burnin.words.over"), Type.HEADING),
                "growx, wmin 40");
        List<String> sentences = hold.sentences();
        for (int i = 0; i < sentences.size(); i++) {
            words.add(Note.of(sentences.get(i), i == 1 ? Type.TEXT_STRONG : Type.TEXT), "growx, wmin 40");
        }
        List<String> heads = hold.running()
                ? List.of("burnin.now", "burnin.end", "burnin.allowed")
                : List.of("burnin.end", "burnin.tends", "burnin.allowed");
        for (List<String> row : hold.rows()) {
            JPanel line = new JPanel(new MigLayout("insets 4 0 0 0, gap 8 2, wrap 2, fillx", "[][grow,right]"));
            line.setOpaque(false);
            line.add(Note.of(row.get(0), Type.TEXT_STRONG), "span, growx, wmin 40");
            for (int i = 1; i < row.size(); i++) {
                if (!row.get(i).isEmpty()) {
                    line.add(Label.muted(Words.of(heads.get(i - 1)), Type.CAPTION));
                    line.add(Label.of(row.get(i), Type.TEXT));
                }
            }
            words.add(line, "growx, wmin 0");
        }
    }
}
