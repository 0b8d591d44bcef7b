package railwitness.logger.ui.screen.unit;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.transformer.DesignLine;
import railwitness.analysis.transformer.DesignReport;
import railwitness.analysis.transformer.WoundDesign;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Words;

/** What the sheet's transformer comes to, as it is typed: the line that limits first and marked, what breaks a limit in red. */
final class ToroidPanel extends JPanel {
    private final Note verdict = Note.of("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet(
            "toroid",
            List.of(
                    Column.words(Words.of("toroid.line")),
                    Column.numbers(Words.of("toroid.value")),
                    Column.words(""),
                    Column.numbers(Words.of("toroid.limit")),
                    Column.numbers(Words.of("toroid.share"), "%")));

    ToroidPanel() {
        super(new MigLayout("insets 0, gap 0 4, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        setOpaque(false);
        setName("toroid design");
        add(Label.of(Words.of("toroid.title"), Type.TITLE));
        add(verdict, "growx, wmin 60, gapbottom 6");
        add(sheet.head(), "growx");
        add(sheet, "growx");
        setVisible(false);
    }

    /** @param design hidden where it has no turns, or what it says cannot be */
    void show(WoundDesign design) {
        Optional<DesignReport> report = report(design);
        setVisible(report.isPresent());
        report.ifPresent(found -> {
            verdict.setText(found.verdict());
            Optional<DesignLine> limiting = found.limiting();
            List<Row> rows = new java.util.ArrayList<>();
            limiting.ifPresent(line -> rows.add(row(line, true)));
            found.lines().stream()
                    .filter(line -> limiting.isEmpty() || line != limiting.get())
                    .forEach(line -> rows.add(row(line, false)));
            sheet.rows(rows);
        });
        revalidate();
    }

    private static Optional<DesignReport> report(WoundDesign design) {
        if (design.design().transformer().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(DesignReport.of(design));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Row row(DesignLine line, boolean limits) {
        Ink ink = line.holds() ? limits ? Ink.INK : Ink.PENCIL : Ink.FAULT;
        String limit = line.atMost().isPresent()
                ? "\u2264 " + number(line.atMost().getAsDouble())
                : line.atLeast().isPresent() ? "\u2265 " + number(line.atLeast().getAsDouble()) : "";
        return Row.of(List.of(
                Cell.of(limits ? Words.of("toroid.limits", line.name()) : line.name(), limits ? Ink.INK : Ink.MUTED),
                Cell.of(number(line.value()), ink),
                Cell.of(line.unit().equals("1") ? "" : line.unit().replace("ohm", "\u03a9"), Ink.MUTED),
                Cell.of(limit, Ink.MUTED),
                Cell.of(
                        line.share().isPresent()
                                ? String.format(
                                        Locale.ROOT, "%.0f", 100 * line.share().getAsDouble())
                                : "",
                        ink)));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, Math.abs(value) >= 1000 ? "%.0f" : "%.3g", value);
    }
}
