package railwitness.logger.ui.screen.trace;

import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.logger.ui.screen.theme.Look;

/**
 * One trace at one moment, down to the pixel: what of it has changed since the moment before is painted again, no more.
 *
 * @param columns what was read, one for each pixel column of the plot
 * @param plot where it is drawn
 */
record TracePicture(TraceModel model, Optional<TraceColumns> columns, ValueAxis axis, Rectangle plot) {
    private static final int GRID_PIXELS = 36;
    /** Room for the words of a limit that stands beyond everything read. */
    private static final int LIMIT_WORDS = 14;
    /** The axis stays until what it holds needs less than this of it. */
    private static final double LEAST_USE = 0.4;

    /** @param before its axis is kept where it still holds everything, so that the picture stands still */
    static TracePicture of(TraceModel model, Rectangle plot, Optional<TracePicture> before) {
        Optional<TraceColumns> columns =
                model.readings().map(readings -> readings.columns(model.fromSeconds(), model.toSeconds(), plot.width));
        ValueAxis wanted = axis(model, columns, plot);
        ValueAxis axis = before.filter(past -> past.plot.equals(plot) && past.sameMatter(model))
                .map(TracePicture::axis)
                .filter(past -> past.holds(wanted, LEAST_USE))
                .orElse(wanted);
        return new TracePicture(model, columns, axis, plot);
    }

    private static ValueAxis axis(TraceModel model, Optional<TraceColumns> columns, Rectangle plot) {
        double low = model.lowestPredicted().orElse(Double.POSITIVE_INFINITY);
        double high = model.highestPredicted().orElse(Double.NEGATIVE_INFINITY);
        if (columns.isPresent()) {
            TraceColumns read = columns.get();
            for (int i = 0; i < read.size(); i++) {
                if (read.has(i)) {
                    low = Math.min(low, read.lowest(i));
                    high = Math.max(high, read.highest(i));
                }
            }
        }
        if (low > high) {
            low = 0;
            high = 1;
        }
        double reach = Math.max(high - low, Math.abs(high) * 0.05) * 0.8;
        double least = low;
        double most = high;
        for (TraceModel.LimitLine limit : model.limits()) {
            if (limit.broken() || limit.value() > least - reach && limit.value() < most + reach) {
                low = Math.min(low, limit.value());
                high = Math.max(high, limit.value());
            }
        }
        double words = (high - low) * Look.px(LIMIT_WORDS) / Math.max(1, plot.height);
        low -= low < least ? words : 0;
        high += high > most ? words : 0;
        return ValueAxis.holding(
                low,
                high,
                Math.max(3, plot.height / Look.px(GRID_PIXELS)),
                model.stroke().leastRange());
    }

    int x(double seconds) {
        double share = (seconds - model.fromSeconds()) / (model.toSeconds() - model.fromSeconds());
        return plot.x + (int) Math.round(share * plot.width);
    }

    int y(double value) {
        return plot.y + plot.height - (int) Math.round(axis.share(value) * plot.height);
    }

    /** What has to be painted again, the plot's own place where all of it; empty when nothing has. */
    Optional<Rectangle> changedSince(TracePicture before) {
        if (!before.plot.equals(plot)
                || !before.axis.equals(axis)
                || !before.sameMatter(model)
                || before.columns.isPresent() != columns.isPresent()) {
            return Optional.of(plot);
        }
        int first = plot.width;
        int last = -1;
        if (columns.isPresent()) {
            first = columns.get().firstChange(before.columns.get());
            last = columns.get().lastChange(before.columns.get());
        }
        for (int i = 0; i < model.spans().size(); i++) {
            OptionalDouble was = before.model.spans().get(i).averagedTo();
            OptionalDouble is = model.spans().get(i).averagedTo();
            if (is.isPresent() && was.isPresent() && x(is.getAsDouble()) != x(was.getAsDouble())) {
                first = Math.min(first, x(was.getAsDouble()) - plot.x - 1);
                last = Math.max(last, x(is.getAsDouble()) - plot.x + 1);
            }
        }
        if (last < 0) {
            return Optional.empty();
        }
        int from = columns.isPresent() ? lastKnownBefore(first) : first;
        int thick = Look.px(4);
        return Optional.of(new Rectangle(plot.x + from - thick, plot.y, last - from + 2 * thick, plot.height));
    }

    /** The line comes from there. */
    private int lastKnownBefore(int column) {
        int at = Math.min(column, columns.get().size()) - 1;
        while (at > 0 && !columns.get().has(at)) {
            at--;
        }
        return Math.max(0, at);
    }

    /** Everything but the readings and how far the averaging has come is as it was. */
    private boolean sameMatter(TraceModel other) {
        return model.stroke().equals(other.stroke())
                && model.fromSeconds() == other.fromSeconds()
                && model.toSeconds() == other.toSeconds()
                && model.cursor().equals(other.cursor())
                && model.limits().equals(other.limits())
                && model.notes().equals(other.notes())
                && steadySpans(model).equals(steadySpans(other));
    }

    private static List<StepSpan> steadySpans(TraceModel of) {
        return of.spans().stream().map(StepSpan::withoutEndOfAverage).toList();
    }
}
