package railwitness.logger.reporting.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.reading.Waveform;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.WaveformEntry;

/** Waveforms of the rails' ripple, each with its peak-to-peak marked; the last one of each rail. */
public final class WaveformCharts {
    private static final int LEAST_SAMPLES = 16;
    private static final int MOST_PLACES = 800;
    private static final int MOST_PERIODS = 8;
    private static final int LEAST_SHOWN = 64;
    private static final double MILLI = 1000;
    private static final double MICRO = 1e6;

    private final Map<Channel, Waveform> last = new LinkedHashMap<>();

    public WaveformCharts(SessionFile file) {
        file.waveforms().stream()
                .map(WaveformEntry::waveform)
                .filter(waveform -> waveform.values().length >= LEAST_SAMPLES)
                .filter(waveform -> waveform.channel().quantity() == Quantity.RIPPLE)
                .forEach(waveform -> last.put(waveform.channel(), waveform));
    }

    /** In mV about their mean, over microseconds; empty where no scope looked. */
    public List<Chart> all() {
        List<Chart> charts = new ArrayList<>();
        last.forEach((channel, waveform) -> charts.add(chart(channel.node(), waveform)));
        return charts;
    }

    private static Chart chart(String rail, Waveform waveform) {
        double[] volts = waveform.values();
        double mean = Arrays.stream(volts).average().orElse(0);
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        int shown = shown(volts, mean);
        int each = Math.max(1, 2 * shown / MOST_PLACES);
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int from = 0; from < shown; from += each) {
            int top = from;
            int bottom = from;
            for (int i = from; i < Math.min(shown, from + each); i++) {
                top = volts[i] > volts[top] ? i : top;
                bottom = volts[i] < volts[bottom] ? i : bottom;
            }
            for (int i : new int[] {Math.min(top, bottom), Math.max(top, bottom)}) {
                x.add(i * waveform.stepSeconds() * MICRO);
                y.add((volts[i] - mean) * MILLI);
            }
        }
        for (double one : volts) {
            highest = Math.max(highest, (one - mean) * MILLI);
            lowest = Math.min(lowest, (one - mean) * MILLI);
        }
        String peakToPeak =
                new BigDecimal(highest - lowest).round(new MathContext(4)).toPlainString() + " mV peak to peak"
                        + (shown < volts.length ? " over all of it" : "");
        return new Chart(
                "Ripple of the " + rail + " rail",
                "mV",
                "\u00b5s",
                List.of(Curve.measured("", values(x), values(y), new double[x.size()], OptionalInt.of(0))),
                List.of(new LimitLine(peakToPeak, highest, false, true), new LimitLine("", lowest, true, true)));
    }

    /** How many samples are drawn: some periods of the ripple, so that its form is seen; all where it has none. */
    private static int shown(double[] volts, double mean) {
        int rises = 0;
        for (int i = 1; i < volts.length; i++) {
            rises += volts[i - 1] < mean && volts[i] >= mean ? 1 : 0;
            if (rises > MOST_PERIODS && i >= LEAST_SHOWN) {
                return i;
            }
        }
        return volts.length;
    }

    private static double[] values(List<Double> all) {
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
