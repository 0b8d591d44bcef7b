package railwitness.logger.ui.screen.chart;

import java.util.List;
import java.util.Locale;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.Curve;
import railwitness.logger.reporting.chart.LimitLine;
import railwitness.logger.ui.screen.widgets.RailNames;
import railwitness.logger.ui.screen.widgets.Words;

/** A picture with its words in the language of the window. */
final class ChartWords {
    private static final List<String> LIMITS =
            List.of("lowest allowed", "highest allowed", "alike up to", "alike from", "mean");
    private static final String RAIL = " rail";

    private ChartWords() {}

    static Chart of(Chart chart) {
        return new Chart(
                of(chart.title()),
                chart.unit(),
                chart.acrossUnit(),
                chart.curves().stream().map(ChartWords::of).toList(),
                chart.limits().stream().map(ChartWords::of).toList(),
                chart.places(),
                chart.odd());
    }

    private static String of(String words) {
        return Words.orElse("chart." + words.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-"), words);
    }

    private static Curve of(Curve curve) {
        String name = curve.name().endsWith(RAIL)
                ? RailNames.full(curve.name().substring(0, curve.name().length() - RAIL.length()))
                : numbered(curve.name());
        return new Curve(name, curve.x(), curve.y(), curve.expanded(), curve.predicted(), curve.rail());
    }

    private static LimitLine of(LimitLine limit) {
        return new LimitLine(numbered(limit.words()), limit.at(), limit.lower(), limit.mark());
    }

    /** Words with a number behind them. */
    private static String numbered(String text) {
        for (String words : LIMITS) {
            if (text.startsWith(words + " ")) {
                return of(words) + text.substring(words.length());
            }
        }
        return of(text);
    }
}
