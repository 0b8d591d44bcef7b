package railwitness.logger.reporting.comparing;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.ChartInk;
import railwitness.logger.reporting.chart.ChartPainter;
import railwitness.logger.reporting.chart.Lettering;
import railwitness.logger.text.VisibleText;

/** A comparison on paper: curves as vectors, then all of the text. A4, upright. */
public final class ComparisonPdf implements AutoCloseable {
    private static final String FONTS = "/com/formdev/flatlaf/fonts/roboto/";
    private static final float MARGIN = 45;
    private static final float CHART_HEIGHT = 170;
    private static final float BETWEEN = 24;
    private static final float LARGEST = 8.5f;

    private final PDDocument document = new PDDocument();
    private final PDType0Font font;
    private final ChartInk ink = ChartInk.paper(Lettering.packed());
    private PDPageContentStream page;
    private float y;

    private ComparisonPdf() throws IOException {
        try (InputStream in = ComparisonPdf.class.getResourceAsStream(FONTS + "Roboto-Regular.ttf")) {
            font = PDType0Font.load(document, in);
        }
    }

    /**
     * Makes the file; it gets its name when it is whole.
     *
     * @throws ComparisonException when the file is there already or cannot be written
     */
    public static void write(Comparison comparison, Path out) {
        if (Files.exists(out)) {
            throw new ComparisonException(out + " is already there and is never written over; choose another name");
        }
        Path part = out.resolveSibling("." + out.getFileName() + ".part");
        try (ComparisonPdf pdf = new ComparisonPdf()) {
            pdf.fill(comparison);
            pdf.document.save(part.toFile());
            Files.move(part, out, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            part.toFile().delete();
            throw new ComparisonException(
                    out + " cannot be written (" + e.getMessage() + "); is the folder there, and is there room?");
        }
    }

    private void fill(Comparison comparison) throws IOException {
        newPage();
        line(
                comparison.sessions().stream()
                                .anyMatch(session -> session.head().rehearsal())
                        ? "Comparison -- REHEARSAL on the virtual bench, no real unit"
                        : "Comparison",
                14);
        for (int i = 0; i < comparison.sessions().size(); i++) {
            line(
                    Comparison.letter(i) + "   "
                            + ComparisonText.line(comparison.sessions().get(i)),
                    LARGEST);
        }
        comparison
                .unlike()
                .forEach((place, charts) -> unchecked(() -> line(
                        Comparison.letter(place) + " is unlike its sisters: "
                                + String.join(
                                        "; ",
                                        charts.stream()
                                                .map(chart -> chart.figure().label())
                                                .toList()),
                        LARGEST)));
        y += 10;
        ComparisonCharts charts = new ComparisonCharts(comparison);
        pictures(charts.control());
        pictures(charts.overEachOther());
        tables(comparison);
        page.close();
        numbers();
    }

    /** More than can be read in one line of a page. */
    private static final int LONGEST_LINE = 1_500;

    private void newPage() throws IOException {
        if (page != null) {
            page.close();
        }
        PDPage sheet = new PDPage(PDRectangle.A4);
        document.addPage(sheet);
        page = new PDPageContentStream(document, sheet);
        y = MARGIN;
    }

    private float width() {
        return PDRectangle.A4.getWidth() - 2 * MARGIN;
    }

    /** Smaller where it would not fit. */
    private void line(String text, float size) throws IOException {
        String shown = glyphs(text);
        float natural = font.getStringWidth(shown) / 1000 * size;
        float fitting = Math.min(size, size * width() / Math.max(natural, 1));
        if (y + size * 1.4f > PDRectangle.A4.getHeight() - MARGIN) {
            newPage();
        }
        y += size * 1.4f;
        at(shown, MARGIN, fitting);
    }

    private void at(String shown, float x, float size) throws IOException {
        page.beginText();
        page.setFont(font, size);
        page.newLineAtOffset(x, PDRectangle.A4.getHeight() - y);
        page.showText(shown);
        page.endText();
    }

    /** What the font has no sign for is written as its code. */
    private String glyphs(String text) {
        StringBuilder shown = new StringBuilder();
        VisibleText.line(VisibleText.shortened(text, LONGEST_LINE)).codePoints().forEach(codePoint -> {
            try {
                font.encode(Character.toString(codePoint));
                shown.appendCodePoint(codePoint);
            } catch (IOException | IllegalArgumentException e) {
                shown.append(String.format(java.util.Locale.ROOT, "[U+%04X]", codePoint));
            }
        });
        return shown.toString();
    }

    private void pictures(List<Chart> charts) throws IOException {
        float wide = (width() - BETWEEN) / 2;
        for (int i = 0; i < charts.size(); i++) {
            if (i % 2 == 0 && y + CHART_HEIGHT > PDRectangle.A4.getHeight() - MARGIN) {
                newPage();
            }
            picture(charts.get(i), MARGIN + i % 2 * (wide + BETWEEN), wide);
            if (i % 2 == 1 || i == charts.size() - 1) {
                y += CHART_HEIGHT + 12;
            }
        }
    }

    private void picture(Chart chart, float x, float wide) throws IOException {
        PdfBoxGraphics2D ground = new PdfBoxGraphics2D(document, wide, CHART_HEIGHT);
        ground.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        ChartPainter.draw(chart, ink, ground, new Rectangle2D.Float(0, 0, wide, CHART_HEIGHT));
        ground.dispose();
        page.saveGraphicsState();
        page.transform(Matrix.getTranslateInstance(x, PDRectangle.A4.getHeight() - y - CHART_HEIGHT));
        page.drawForm(ground.getXFormObject());
        page.restoreGraphicsState();
    }

    /** One row for each figure; with control charts the values alone, else each later session against the first. */
    private void tables(Comparison comparison) throws IOException {
        newPage();
        int sessions = comparison.sessions().size();
        if (!comparison.charts().isEmpty()) {
            List<String> letters =
                    IntStream.range(0, sessions).mapToObj(Comparison::letter).toList();
            row("figure", "unit", letters);
            for (Compared figure : comparison.figures()) {
                row(
                        figure.label(),
                        figure.unit(),
                        IntStream.range(0, sessions)
                                .mapToObj(i -> Print.value(figure, i))
                                .toList());
            }
            return;
        }
        for (int i = 1; i < sessions; i++) {
            String name = Comparison.letter(i);
            row("figure", "unit", List.of("A", name, name + " - A", "U (95 %)", "answer"));
            for (Compared figure : comparison.figures()) {
                Optional<Change> change = figure.changes().get(i);
                row(
                        figure.label(),
                        figure.unit(),
                        List.of(
                                Print.value(figure, 0),
                                Print.value(figure, i),
                                change.map(Print::difference).orElse(""),
                                change.map(Print::expanded).orElse(""),
                                change.map(one -> one.answer().words()).orElse("not found in both")));
            }
            y += 8;
        }
        line(
                "Errors of the same instrument on the same range cancel in a difference, as long as it kept them in"
                        + " between.",
                LARGEST - 1);
    }

    private void row(String label, String unit, List<String> cells) throws IOException {
        float size = cells.size() > 5 ? 6.5f : LARGEST - 0.5f;
        if (y + size * 1.6f > PDRectangle.A4.getHeight() - MARGIN) {
            newPage();
        }
        y += size * 1.6f;
        at(glyphs(label), MARGIN, size);
        float first = 150;
        at(glyphs(unit), MARGIN + first, size);
        float each = (width() - first - 25) / cells.size();
        for (int i = 0; i < cells.size(); i++) {
            at(glyphs(cells.get(i)), MARGIN + first + 25 + i * each, size);
        }
    }

    private void numbers() throws IOException {
        int pages = document.getNumberOfPages();
        for (int i = 0; i < pages; i++) {
            page = new PDPageContentStream(
                    document, document.getPage(i), PDPageContentStream.AppendMode.APPEND, true, true);
            y = PDRectangle.A4.getHeight() - 24;
            at("page " + (i + 1) + " of " + pages, MARGIN, 7.5f);
            page.close();
        }
    }

    private interface Setting {
        void set() throws IOException;
    }

    private static void unchecked(Setting setting) {
        try {
            setting.set();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
