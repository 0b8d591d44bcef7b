package railwitness.logger.screen.sessions;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.logger.comparing.Change;
import railwitness.logger.comparing.Compared;
import railwitness.logger.comparing.Comparison;
import railwitness.logger.screen.paper.Cell;
import railwitness.logger.screen.paper.Column;
import railwitness.logger.screen.paper.Ink;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Note;
import railwitness.logger.screen.paper.Numbers;
import railwitness.logger.screen.paper.Readable;
import railwitness.logger.screen.paper.Row;
import railwitness.logger.screen.paper.RuledSheet;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.store.SessionHead;

/** Two sessions figure by figure, and what really changed between them. */
final class ComparisonPanel extends Readable {
    private static final int DIGITS = 5;

    private final Label title = Label.of(Words.of("comparison.title"), Type.HEADING);
    private final Note words = Note.muted(Words.of("comparison.empty"), Type.TEXT);
    private final RuledSheet sheet = new RuledSheet(
            "comparison",
            List.of(
                    Column.words(Words.of("findings.figure")),
                    Column.numbers("A"),
                    Column.numbers("B"),
                    Column.numbers(Words.of("comparison.change"))));

    ComparisonPanel() {
        super(new MigLayout("insets 0 0 0 10, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        add(title);
        add(words, "growx, wmin 60");
        add(sheet.head(), "growx");
        add(sheet, "growx");
        sheet.setVisible(false);
        sheet.head().setVisible(false);
    }

    void show(Comparison comparison) {
        words.setText(Words.of(
                "comparison.words",
                name(comparison.sessions().get(0).head()),
                name(comparison.sessions().get(1).head())));
        List<Row> rows = new ArrayList<>();
        comparison.figures().forEach(figure -> rows.add(row(figure)));
        sheet.setVisible(true);
        sheet.head().setVisible(true);
        sheet.rows(rows);
        revalidate();
    }

    private static String name(SessionHead head) {
        return head.id() + (head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition());
    }

    private static Row row(Compared figure) {
        Optional<Change> change = figure.changes().get(1);
        boolean real = change.isPresent() && change.get().answer() == railwitness.logger.comparing.Answer.REAL;
        return Row.of(List.of(
                Cell.ink(figure.label() + (figure.unit().equals("1") ? "" : ", " + figure.unit())),
                Cell.of(value(figure.values().get(0)), Ink.MUTED),
                Cell.of(value(figure.values().get(1)), Ink.INK),
                Cell.of(
                        change.map(one -> Numbers.significant(one.difference().value(), 3))
                                .orElse(""),
                        real ? Ink.LIVE : Ink.MUTED)));
    }

    private static String value(Optional<Estimate> value) {
        return value.map(known -> Numbers.significant(known.value(), DIGITS)).orElse("\u2013");
    }
}
