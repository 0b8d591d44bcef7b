package railwitness.logger.ui.screen.sessions;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.comparing.Compared;
import railwitness.logger.reporting.comparing.Comparison;
import railwitness.logger.reporting.comparing.ComparisonCharts;
import railwitness.logger.reporting.comparing.SisterChart;
import railwitness.logger.ui.screen.chart.ChartView;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FigureWords;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;

/** The pictures of a comparison: the chosen figure in all sessions, then the curves over each other. */
final class ComparisonPictures extends Readable {
    private static final int DIGITS = 5;

    private final transient WindowModel desk;
    private final ChartView values = new ChartView("figure chart");
    private final ChartView ranges = new ChartView("range chart");
    private final Note words = Note.of("", Type.TEXT);
    private final List<ChartView> curves = new ArrayList<>();
    private volatile Optional<Compared> wanted = Optional.empty();

    /** What the chosen figure comes to. */
    private record Figure(List<Chart> charts, String words) {}

    ComparisonPictures(WindowModel desk) {
        super(new MigLayout("insets 4 6 4 10, gap 0 14, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.desk = desk;
        setName("comparison pictures");
        reachable(Words.of("comparison.pictures"));
        words.setName("figure words");
        add(values, "growx, h 200!");
        add(ranges, "growx, h 130!");
        add(words, "growx, wmin 60");
        values.show(Optional.empty());
        ranges.show(Optional.empty());
    }

    /** The curves over each other, those furthest apart first, with the titles they have on the screen. Slow. */
    static List<Chart> overEachOther(Comparison comparison) {
        ComparisonCharts charts = charts(comparison);
        List<Chart> all = new ArrayList<>();
        for (String rail : charts.rails()) {
            charts.railAgainstLoad(rail)
                    .map(chart -> chart.titled(Words.of("comparison.chart.rail", RailNames.full(rail))))
                    .ifPresent(all::add);
        }
        charts.efficiencyAgainstLoad()
                .map(chart -> chart.titled(Words.of("comparison.chart.efficiency")))
                .ifPresent(all::add);
        charts.lossAgainstLoad()
                .map(chart -> chart.titled(Words.of("comparison.chart.loss")))
                .ifPresent(all::add);
        for (String rail : charts.rails()) {
            charts.rippleAgainstLoad(rail)
                    .map(chart -> chart.titled(Words.of("comparison.chart.ripple", RailNames.full(rail))))
                    .ifPresent(all::add);
        }
        all.sort(Comparator.comparingDouble(Chart::apart).reversed());
        return all;
    }

    private static ComparisonCharts charts(Comparison comparison) {
        return new ComparisonCharts(comparison, value -> Numbers.significant(value, DIGITS));
    }

    void show(List<Chart> overEachOther) {
        curves.forEach(this::remove);
        curves.clear();
        values.show(Optional.empty());
        ranges.show(Optional.empty());
        words.setText("");
        for (Chart chart : overEachOther) {
            ChartView view = new ChartView("curves " + curves.size());
            view.show(Optional.of(chart));
            curves.add(view);
            add(view, "growx, h 190!");
        }
        revalidate();
        repaint();
    }

    /** Shows a figure in all sessions, soon. */
    void about(Comparison comparison, Compared figure) {
        wanted = Optional.of(figure);
        desk.work(
                () -> wanted.filter(one -> one == figure).map(one -> figure(comparison, one)),
                found -> found.filter(one -> wanted.filter(now -> now == figure).isPresent())
                        .ifPresent(this::show),
                desk::message);
    }

    private void show(Figure figure) {
        values.show(figure.charts().stream().findFirst());
        ranges.show(figure.charts().stream().skip(1).findFirst());
        words.setText(figure.words());
        revalidate();
        repaint();
    }

    private static Figure figure(Comparison comparison, Compared figure) {
        List<Chart> charts = charts(comparison).ofOne(figure);
        List<Chart> titled = new ArrayList<>(charts);
        if (!titled.isEmpty()) {
            titled.set(0, titled.get(0).titled(FigureWords.name(figure.name(), figure.rail())));
        }
        return new Figure(titled, words(comparison, figure));
    }

    private static String words(Comparison comparison, Compared figure) {
        int sessions = comparison.sessions().size();
        if (sessions < Comparison.LEAST_FOR_CHARTS) {
            return Words.of("comparison.fewer", Comparison.LEAST_FOR_CHARTS, sessions) + points(figure);
        }
        Optional<SisterChart> chart = comparison.chart(figure);
        if (chart.isEmpty()) {
            return Words.of("comparison.notinall");
        }
        if (chart.get().unlike().isEmpty()) {
            return Words.of("comparison.alike", sessions) + points(figure);
        }
        return chart.get().unlike().stream()
                        .sorted()
                        .map(place -> Words.of(
                                "comparison.isunlike",
                                Comparison.letter(place),
                                String.join("; ", chart.get().reasons(place))))
                        .collect(Collectors.joining(" "))
                + points(figure);
    }

    /** Where the sessions have the figure at points of their own. */
    private static String points(Compared figure) {
        return figure.atOtherPoints() ? " " + Words.of("comparison.otherpoints") : "";
    }
}
