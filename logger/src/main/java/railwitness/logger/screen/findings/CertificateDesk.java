package railwitness.logger.screen.findings;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import railwitness.logger.certificate.Certificate;
import railwitness.logger.certificate.Order;
import railwitness.logger.certificate.Paper;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.Act;
import railwitness.logger.screen.stage.Desk;
import railwitness.logger.screen.stage.Line;
import railwitness.logger.screen.theme.Look;

/** The certificate of the session that is looked at: seen first, then kept beside it. */
final class CertificateDesk {
    private static final float SHOWN_DPI = 110;

    private final Desk desk;
    private final Page page = new Page();
    private Optional<Desk.OpenSession> session = Optional.empty();
    private Optional<Path> draft = Optional.empty();
    private boolean working;

    CertificateDesk(Desk desk) {
        this.desk = desk;
    }

    JComponent face() {
        return page;
    }

    void session(Desk.OpenSession opened) {
        session = Optional.of(opened);
        draft = Optional.empty();
        page.show(Optional.empty());
    }

    Line line(String head) {
        List<Act> acts = new ArrayList<>();
        if (draft.isPresent()) {
            acts.add(new Act("close-draft", Words.of("act.certificate.leave"), "control W", false, this::leave));
            acts.add(new Act("keep", Words.of("act.certificate.keep"), "control ENTER", true, this::keep));
        } else if (!working) {
            acts.add(new Act("certificate", Words.of("act.certificate"), "control ENTER", true, this::draft));
        }
        String words =
                working ? Words.of("certificate.working") : draft.isPresent() ? Words.of("certificate.seen") : head;
        return Line.of(
                words, file().map(kept -> Words.of("findings.file", kept)).orElse(""), acts.toArray(new Act[0]));
    }

    private Optional<Path> file() {
        return session.map(Desk.OpenSession::file);
    }

    void draft() {
        Path file = file().orElseThrow();
        working = true;
        desk.work(
                () -> {
                    Path made = Files.createTempDirectory("railwitness").resolve("certificate.pdf");
                    Certificate.of(
                                    file,
                                    new Order(
                                            Paper.A4,
                                            true,
                                            Optional.empty(),
                                            Optional.empty(),
                                            Optional.empty(),
                                            Instant.now()))
                            .writeTo(made);
                    try (PDDocument document = Loader.loadPDF(made.toFile())) {
                        page.show(Optional.of(new PDFRenderer(document).renderImageWithDPI(0, SHOWN_DPI)));
                    }
                    return made;
                },
                made -> {
                    working = false;
                    draft = Optional.of(made);
                    page.revalidate();
                    page.requestFocusInWindow();
                },
                why -> {
                    working = false;
                    desk.message(why);
                });
    }

    private void keep() {
        Path made = draft.orElseThrow();
        String name = file().orElseThrow().getFileName().toString().replaceFirst("\\.session$", "") + ".pdf";
        Path kept = file().orElseThrow().resolveSibling(name);
        desk.work(
                () -> Files.copy(made, kept, StandardCopyOption.REPLACE_EXISTING),
                path -> {
                    leave();
                    desk.message(Words.of("certificate.kept", kept));
                },
                desk::message);
    }

    private void leave() {
        draft = Optional.empty();
        page.show(Optional.empty());
    }

    /** The first page, as wide as its place. */
    private static final class Page extends JComponent {
        private transient volatile Optional<BufferedImage> image = Optional.empty();

        Page() {
            setName("certificate page");
            setFocusable(true);
            setVisible(false);
            getAccessibleContext();
        }

        void show(Optional<BufferedImage> wanted) {
            image = wanted;
            javax.swing.SwingUtilities.invokeLater(() -> {
                setVisible(wanted.isPresent());
                revalidate();
                repaint();
                javax.swing.SwingUtilities.invokeLater(() -> scrollRectToVisible(new java.awt.Rectangle(0, 0, 10, 10)));
            });
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            image.ifPresent(shown -> {
                Graphics2D g = (Graphics2D) graphics.create();
                g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
                g.drawImage(shown, 0, 0, getWidth() - 1, height(shown), null);
                g.setColor(Look.palette().strongRule());
                g.drawRect(0, 0, getWidth() - 1, height(shown) - 1);
                g.dispose();
            });
        }

        private int height(BufferedImage shown) {
            return shown.getHeight() * Math.max(1, getWidth()) / shown.getWidth();
        }

        @Override
        public Dimension getPreferredSize() {
            return image.map(shown -> new Dimension(Look.px(300), height(shown)))
                    .orElse(new Dimension(0, 0));
        }

        @Override
        public javax.accessibility.AccessibleContext getAccessibleContext() {
            if (accessibleContext == null) {
                accessibleContext = new AccessibleJComponent() {};
                accessibleContext.setAccessibleName(Words.of("certificate.page"));
            }
            return accessibleContext;
        }
    }
}
