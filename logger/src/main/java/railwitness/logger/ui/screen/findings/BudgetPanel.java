package railwitness.logger.ui.screen.findings;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.uncertainty.Contribution;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.ChannelNames;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Words;

/** One figure: how it is defined, where it holds, what its uncertainty is made of. */
final class BudgetPanel extends JPanel {
    private static final int MOST = 5;

    private final Label title = Label.of("", Type.HEADING);
    private final Label remark = Label.muted("", Type.CAPTION);
    private final Note words = Note.muted("", Type.TEXT);
    private final RuledSheet rows = new RuledSheet(
            Words.of("budget.name"),
            List.of(
                    Column.words(Words.of("budget.from")),
                    Column.numbers(Words.of("budget.u")),
                    Column.numbers(Words.of("budget.share"))));

    BudgetPanel() {
        super(new MigLayout("insets 0, gap 0 4, wrap 2, fillx", "[grow,fill][]"));
        setOpaque(false);
        setName("budget");
        words.setName("definition");
        add(title, "wmin 0");
        add(remark);
        add(words, "span 2, growx, wmin 60");
        add(rows.head(), "span 2, growx");
        add(rows, "span 2, growx");
        setVisible(false);
    }

    void show(FigureRow finding) {
        setVisible(true);
        title.setText(Words.of(
                "budget.title",
                FigureWords.name(finding.name().word(), finding.rail()),
                FindingRows.value(finding),
                FindingRows.uncertainty(finding),
                FigureWords.of(finding.name()).unit()));
        remark.setText(finding.coverage()
                .map(coverage -> "k = " + Numbers.fixed(coverage.k(), 2))
                .orElse(""));
        String at = finding.figure().map(figure -> figure.at()).orElse("");
        String reason = finding.verdict().map(verdict -> verdict.reason()).orElse("");
        words.setText(Words.of("budget.definition", finding.name().definition())
                + (at.isEmpty() ? "" : " " + Words.of("budget.at", at))
                + (reason.isEmpty()
                        ? ""
                        : " "
                                + Words.of(
                                        "budget.verdict",
                                        reason.substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                                                + reason.substring(1))));
        rows.rows(finding.value().map(BudgetPanel::contributions).orElse(List.of()));
        revalidate();
        repaint();
    }

    private static List<Row> contributions(Estimate value) {
        List<Row> rows = new ArrayList<>();
        if (value.u() == 0) {
            return rows;
        }
        List<Contribution> parts = value.contributions();
        for (Contribution part : parts.subList(0, Math.min(MOST, parts.size()))) {
            rows.add(Row.of(List.of(
                    Cell.ink(ChannelNames.inText(part.name())),
                    Cell.ink(Numbers.significant(part.u(), 2)),
                    Cell.ink(Numbers.fixed(part.shareOf(value.u()) * 100, 0) + " %"))));
        }
        return rows;
    }
}
