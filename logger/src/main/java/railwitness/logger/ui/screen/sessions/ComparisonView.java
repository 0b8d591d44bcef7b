package railwitness.logger.ui.screen.sessions;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.swing.JComponent;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.SisterChart;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** Sessions side by side: what really changed, figure by figure, and the pictures of it. */
final class ComparisonView {
    private static final int FEW = 4;

    private final Label title = Label.of("", Type.TITLE);
    private final Note legend = Note.muted("", Type.TEXT);
    private final Note summary = Note.of("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("comparison", List.of());
    private final ComparisonPictures pictures;
    private final Sheet left;
    private final JComponent right;
    private Optional<Worked> shown = Optional.empty();

    /** What is worked out behind the desk before it is shown. */
    record Worked(Comparison comparison, ComparisonRows rows, List<Chart> curves, String summary) {
        static Worked of(Comparison comparison) {
            return new Worked(
                    comparison,
                    ComparisonRows.of(comparison),
                    ComparisonPictures.overEachOther(comparison),
                    ComparisonView.summary(comparison));
        }
    }

    ComparisonView(WindowModel desk) {
        pictures = new ComparisonPictures(desk);
        summary.setName("comparison summary");
        left = new Sheet(
                new MigLayout("insets 14 20 10 20, gap 0, fill, wrap 1", "[grow,fill]", "[]4[]6[]12[grow,fill]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(title, "wmin 0");
        left.add(legend, "growx, wmin 60");
        left.add(summary, "growx, wmin 60");
        left.add(Scroll.of(sheet), "grow, push");
        right = Scroll.of(pictures);
        sheet.onMoved(this::about).onChosen(this::about);
    }

    JComponent left() {
        return left;
    }

    JComponent right() {
        return right;
    }

    Comparison comparison() {
        return shown.orElseThrow().comparison();
    }

    void show(Worked worked) {
        shown = Optional.of(worked);
        Comparison comparison = worked.comparison();
        title.setText(Words.of("comparison.title", comparison.sessions().size()));
        legend.setText(
                legend(comparison.sessions().stream().map(SessionFindings::head).toList()));
        summary.setText(worked.summary());
        sheet.columns(worked.rows().columns());
        sheet.rows(List.of());
        sheet.rows(worked.rows().rows());
        pictures.show(worked.curves());
        sheet.select(1);
        sheet.reveal(0);
        about(1);
        javax.swing.SwingUtilities.invokeLater(sheet::requestFocusInWindow);
    }

    private void about(int row) {
        shown.ifPresent(worked ->
                worked.rows().figures().get(row).ifPresent(figure -> pictures.about(worked.comparison(), figure)));
    }

    /** Few in full, one below the other; many by what tells them apart. */
    private static String legend(List<SessionHead> heads) {
        boolean few = heads.size() <= FEW;
        boolean sisters = heads.stream().map(SessionHead::unitSerial).distinct().count() == heads.size();
        return IntStream.range(0, heads.size())
                .mapToObj(i -> Words.of(
                        "comparison.session",
                        Comparison.letter(i),
                        few
                                ? name(heads.get(i))
                                : sisters ? heads.get(i).unitSerial() : SessionRows.date(heads.get(i))))
                .collect(Collectors.joining(few ? "\n" : ";  "));
    }

    private static String name(SessionHead head) {
        String serial = head.unitSerial().isEmpty() ? "" : " " + head.unitSerial();
        String condition = head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition();
        return head.unitName() + serial + condition + ", " + SessionRows.date(head);
    }

    private static String summary(Comparison comparison) {
        if (comparison.charts().isEmpty()) {
            return Words.of("comparison.summary", comparison.real(), comparison.judged(), chance(comparison.judged()));
        }
        if (comparison.unlike().isEmpty()) {
            return Words.of("comparison.allalike", comparison.sessions().size());
        }
        return comparison.unlike().entrySet().stream()
                .map(entry -> Words.of(
                        "comparison.unlike.words",
                        Comparison.letter(entry.getKey()),
                        serial(comparison, entry.getKey()),
                        figures(entry.getValue())))
                .collect(Collectors.joining(" "));
    }

    /** Few by their names, many by their number. */
    private static String figures(List<SisterChart> charts) {
        return charts.size() <= FEW
                ? charts.stream()
                        .map(chart -> FigureWords.name(
                                chart.figure().name(), chart.figure().rail()))
                        .collect(Collectors.joining(", "))
                : Words.of("comparison.unlike.many", charts.size());
    }

    private static String serial(Comparison comparison, int place) {
        String serial = comparison.sessions().get(place).head().unitSerial();
        return serial.isEmpty() ? "" : " (" + serial + ")";
    }

    /** At 95 % one in twenty seems real without being so. */
    private static long chance(long judged) {
        return (judged + 19) / 20;
    }
}
