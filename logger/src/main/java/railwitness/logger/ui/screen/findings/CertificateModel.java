package railwitness.logger.ui.screen.findings;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.certificate.Letterhead;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Busy;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.widgets.FileChoice;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sentences;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** The certificate of the session that is looked at: ordered, seen with all its pages, then kept. */
final class CertificateModel {
    private static final int PAUSE_MILLIS = 500;
    private static final int USUAL_WIDTH = 700;

    private final WindowModel desk;
    private final Busy busy;
    private final Runnable turned;
    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 38,fill][grow 62,fill]"));
    private final CertificateForm form;
    private final CertificatePages pages = new CertificatePages();
    private final JScrollPane scroll = Scroll.of(pages);
    private final Timer pause = new Timer(PAUSE_MILLIS, e -> draft());
    private Optional<WindowModel.OpenSession> session = Optional.empty();
    private Optional<CertificateDraft> draft = Optional.empty();
    private boolean open;

    /** @param turned told when it is opened or left */
    CertificateModel(WindowModel desk, Runnable turned) {
        this.desk = desk;
        this.busy = new Busy(desk);
        this.turned = turned;
        this.form = new CertificateForm(desk.remembered(), this::changed);
        pause.setRepeats(false);
        Sheet left = new Sheet(new MigLayout("insets 14 20 10 12, fill"), Palette::sheet, Sheet.Edge.RIGHT);
        left.add(Scroll.of(form), "grow, push");
        Sheet right = new Sheet(new MigLayout("insets 14 18 0 8, fill"), Palette::paper);
        right.add(scroll, "grow, push");
        face.add(left, "grow, push, w 38%!");
        face.add(right, "grow, push, w 62%!");
    }

    JComponent face() {
        return face;
    }

    boolean isOpen() {
        return open;
    }

    void session(WindowModel.OpenSession opened) {
        session = Optional.of(opened);
        if (open) {
            leave();
        }
    }

    private Path file() {
        return session.orElseThrow().file();
    }

    /** Beside the session, under its name. */
    private Path usual() {
        return file().resolveSibling(file().getFileName().toString().replaceFirst("\\.session$", "") + ".pdf");
    }

    /** Sets it as it was ordered the last time. */
    void open() {
        open = true;
        draft = Optional.empty();
        pages.show(List.of());
        form.begin(
                FindingsTitle.title(session.orElseThrow().findings()),
                usual().getFileName().toString());
        turned.run();
        SwingUtilities.invokeLater(pages::requestFocusInWindow);
        WindowModel.OpenSession mine = session.orElseThrow();
        desk.work(
                () -> EarlierSessions.of(mine.file(), mine.findings().head()),
                found -> {
                    if (open && session.filter(one -> one == mine).isPresent()) {
                        form.earlier(found);
                    }
                },
                desk::message);
        draft();
    }

    private void changed() {
        draft = Optional.empty();
        pause.restart();
    }

    private void draft() {
        if (!open) {
            return;
        }
        if (busy.line().isPresent()) {
            pause.restart();
            return;
        }
        Path mine = file();
        Order order = form.order(mine.toAbsolutePath().getParent());
        Optional<Path> letterhead = form.letterhead();
        Map<String, String> choices = form.choices();
        int seen = scroll.getViewport().getWidth();
        int width = seen > 0 ? seen : Look.px(USUAL_WIDTH);
        busy.go(
                Words.of("certificate.working"),
                progress -> {
                    choices.forEach(desk.remembered()::put);
                    Order whole =
                            letterhead.map(Letterhead::in).map(order::under).orElse(order);
                    return CertificateDraft.of(mine, whole, width, progress);
                },
                made -> seen(mine, made),
                why -> refused(mine, why));
    }

    private void seen(Path mine, CertificateDraft made) {
        if (!open || !mine.equals(file())) {
            return;
        }
        form.refused("");
        form.lacking(made.certificate().lackingSigns());
        pages.show(made.pages());
        if (!pause.isRunning()) {
            draft = Optional.of(made);
        }
    }

    private void refused(Path mine, String why) {
        if (open && mine.equals(file())) {
            draft = Optional.empty();
            pages.show(List.of());
            form.refused(Sentences.capital(why.replace(mine + ": ", "")) + ".");
        }
    }

    /** @param head what stands there while no certificate is open */
    StatusLine line(String head) {
        Optional<StatusLine> working = busy.line();
        if (working.isPresent()) {
            return working.get();
        }
        String kept = session.map(one -> Words.of("findings.file", one.file().getFileName()))
                .orElse("");
        if (!open) {
            return StatusLine.of(
                    head, kept, new Act("certificate", Words.of("act.certificate"), "control ENTER", true, this::open));
        }
        Act leave = new Act("close-draft", Words.of("act.certificate.leave"), "control W", false, this::leave);
        if (draft.isEmpty()) {
            return StatusLine.of(Words.of(pause.isRunning() ? "certificate.again" : "certificate.none"), kept, leave);
        }
        return StatusLine.of(
                Words.of("certificate.seen", pages.count()),
                Words.of("certificate.seen.next"),
                leave,
                new Act("print", Words.of("act.print"), "control P", false, this::print),
                new Act("keep-as", Words.of("act.certificate.elsewhere"), "control S", false, this::elsewhere),
                new Act("keep", Words.of("act.certificate.keep"), "control ENTER", true, () -> keep(usual())));
    }

    private void elsewhere() {
        new FileChoice(face, desk.folder())
                .save(Words.of("act.certificate.elsewhere"), usual())
                .ifPresent(this::keep);
    }

    /** By the system's own dialog; the pages are those that are seen. */
    private void print() {
        CertificateDraft made = draft.orElseThrow();
        busy.go(
                Words.of("certificate.printing"),
                progress -> made.print(),
                printed -> desk.message(Words.of(printed ? "certificate.printed" : "certificate.notprinted")));
    }

    private void keep(Path out) {
        CertificateDraft made = draft.orElseThrow();
        busy.go(
                Words.of("certificate.keeping"),
                progress -> {
                    made.keep(out);
                    return out;
                },
                kept -> {
                    leave();
                    desk.message(Words.of("certificate.kept", kept));
                });
    }

    private void leave() {
        open = false;
        pause.stop();
        draft = Optional.empty();
        pages.show(List.of());
        turned.run();
    }
}
