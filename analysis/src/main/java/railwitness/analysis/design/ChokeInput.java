package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.List;

/**
 * Rails of a converter with a choke before the filter capacitor: the mean of the rectified pulses, or, when the choke
 * runs empty at light load, more. Conversion ratios of the buck family in continuous and discontinuous conduction
 * (textbook power electronics, such as Erickson and Maksimovic, Fundamentals of Power Electronics, chapters 3 and 5).
 */
final class ChokeInput {
    private static final int ROUNDS = 60;

    private final Path path;
    private final Deviation.Pulses pulses;
    private final List<String> names;

    ChokeInput(Path path, Deviation.Pulses pulses, List<String> names) {
        this.path = path;
        this.pulses = pulses;
        this.names = names;
    }

    /** As {@link CapacitorInput#at}. */
    Conversion at(double inputVolts, double[] loads) {
        double[] volts = new double[loads.length];
        for (int round = 0; round < ROUNDS; round++) {
            double[] next = new double[loads.length];
            double sum = 0;
            for (int rail = 0; rail < loads.length; rail++) {
                sum += path.ratio(rail) * mean(loads, volts, rail);
            }
            double primary = sum * (railsTogether() ? 1 : 1.0 / loads.length);
            double behindPrimary = inputVolts - primary * (path.switchOhms() + path.primaryOhms());
            for (int rail = 0; rail < loads.length; rail++) {
                double drive = path.ratio(rail) * behindPrimary;
                next[rail] = Math.max(0, rail(drive, mean(loads, volts, rail), rail));
            }
            boolean done = round > 0 && CapacitorInput.settled(volts, next);
            volts = next;
            if (done) {
                break;
            }
        }
        return conversion(loads, volts);
    }

    private double rail(double drive, double mean, int rail) {
        double on = onShare(rail);
        double own = mean * (windingOhms(on) + path.chokeOhms()) + path.diodeVolts();
        double continuous = drive * on - own;
        double empty = 2 * path.chokeHenries() / period(rail) * mean;
        double peak = drive - path.diodeVolts();
        double discontinuous = peak / (1 + empty / (on * on * Math.max(peak, 1e-9))) - mean * path.chokeOhms();
        return path.chokeHenries() > 0 && path.frequencyHz() > 0 ? Math.max(continuous, discontinuous) : continuous;
    }

    /** Winding and diode while one half carries all, and while both halves share the coasting current, ohm. */
    private double windingOhms(double on) {
        return (path.secondaryOhms() + path.diodeOhms()) * (on + (1 - on) / 2);
    }

    private double mean(double[] loads, double[] volts, int rail) {
        return loads[rail] + volts[rail] * path.bleederSiemens();
    }

    private boolean railsTogether() {
        return !(pulses instanceof Deviation.HalfSecondary);
    }

    private double period(int rail) {
        boolean every = pulses instanceof Deviation.AllPulses
                || pulses instanceof Deviation.HalfOfRail half && !half.rail().equals(names.get(rail));
        return every ? path.periodSeconds() / 2 : path.periodSeconds();
    }

    private double onShare(int rail) {
        return path.onSeconds() / period(rail);
    }

    private Conversion conversion(double[] loads, double[] volts) {
        List<Feed> feeds = new ArrayList<>();
        double primarySum = 0;
        double primarySquare = 0;
        double on = 0;
        for (int rail = 0; rail < loads.length; rail++) {
            on = onShare(rail);
            double mean = mean(loads, volts, rail);
            double swing = swing(volts[rail], rail);
            double capacitor = swing * swing / 12;
            double square = (mean * mean + capacitor) * (on + (1 - on) / 2);
            feeds.add(Feed.free(volts[rail], square, capacitor, 1 / period(rail)));
            double referred = path.ratio(rail) * mean;
            primarySum += referred;
            primarySquare += referred * referred;
        }
        double together = railsTogether() ? primarySum * primarySum : primarySquare;
        return new Conversion(feeds, together * on, primarySum * on);
    }

    /** Peak to peak of the choke's current in continuous conduction, A; zero where the choke is not known. */
    private double swing(double volts, int rail) {
        return path.chokeHenries() > 0 ? volts * (1 - onShare(rail)) * period(rail) / path.chokeHenries() : 0;
    }
}
