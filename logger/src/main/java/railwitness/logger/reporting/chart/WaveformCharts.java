package railwitness.logger.reporting.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
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
        int each = Math.max(1, 2 * volts.length / MOST_PLACES);
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int from = 0; from < volts.length; from += each) {
            int top = from;
            int bottom = from;
            for (int i = from; i < Math.min(volts.length, from + each); i++) {
                top = volts[i] > volts[top] ? i : top;
                bottom = volts[i] < volts[bottom] ? i : bottom;
            }
            for (int i : new int[] {Math.min(top, bottom), Math.max(top, bottom)}) {
                x.add(i * waveform.stepSeconds() * MICRO);
                y.add((volts[i] - mean) * MILLI);
            }
            highest = Math.max(highest, (volts[top] - mean) * MILLI);
            lowest = Math.min(lowest, (volts[bottom] - mean) * MILLI);
        }
        String peakToPeak = String.format(Locale.ROOT, "%.4g mV peak to peak", highest - lowest);
        return new Chart(
                "Ripple of the " + rail + " rail",
                "mV",
                "\u00b5s",
                List.of(Curve.measured("", values(x), values(y), new double[x.size()], OptionalInt.of(0))),
                List.of(new LimitLine(peakToPeak, highest, false), new LimitLine("", lowest, true)));
    }

    private static double[] values(List<Double> all) {
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
