package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Rails of a converter whose rectifier charges the filter capacitor. While a switch is on, each rail's current follows
 * {@code L di/dt = ratio * input - drop - rail - own * i - shared * (sum of both)}; the sum of the rails and their
 * differences from the mean each rise as {@code 1 - exp(-t/tau)} (linear circuit of two equal meshes, textbook circuit
 * theory). The rail is what the mean current leaves of the driving voltage.
 */
final class CapacitorInput {
    private static final int ROUNDS = 60;
    private static final double SETTLED_VOLTS = 1e-8;

    private final Path path;
    private final Deviation.Pulses pulses;
    private final List<String> names;

    CapacitorInput(Path path, Deviation.Pulses pulses, List<String> names) {
        this.path = path;
        this.pulses = pulses;
        this.names = names;
    }

    /**
     * @param inputVolts at the unit's terminals, V
     * @param inputAmperes mean input current of the conversion, A
     * @param loads of each rail, A, 0 or more
     * @param start a conversion near this one, from which to begin
     */
    Conversion at(double inputVolts, double inputAmperes, double[] loads, Optional<Conversion> start) {
        double[] drive = new double[loads.length];
        double[] volts = new double[loads.length];
        for (int rail = 0; rail < volts.length; rail++) {
            int index = rail;
            drive[rail] =
                    path.ratio(rail) * (inputVolts + path.inputCapacitorOhms() * inputAmperes) - path.diodeVolts();
            volts[rail] = start.map(near -> near.feeds().get(index).freeVolts()).orElse(Math.max(drive[rail], 0));
        }
        List<Pulse> own = List.of();
        for (int round = 0; round < ROUNDS; round++) {
            own = pulsesOf(withBleeders(loads, volts), volts, inputVolts);
            double[] next = new double[loads.length];
            for (int rail = 0; rail < loads.length; rail++) {
                next[rail] = Math.max(
                        0,
                        drive[rail]
                                - fall(rail, own, withBleeders(loads, volts), volts, inputVolts)
                                + path.capacitorOhms() * loads[rail]);
            }
            boolean done = settled(volts, next);
            volts = next;
            if (done) {
                break;
            }
        }
        return conversion(withBleeders(loads, volts), volts, own);
    }

    static boolean settled(double[] before, double[] after) {
        for (int rail = 0; rail < before.length; rail++) {
            if (Math.abs(before[rail] - after[rail]) > SETTLED_VOLTS) {
                return false;
            }
        }
        return true;
    }

    private double[] withBleeders(double[] loads, double[] volts) {
        double[] means = loads.clone();
        for (int rail = 0; rail < means.length; rail++) {
            means[rail] += volts[rail] * path.bleederSiemens();
        }
        return means;
    }

    /**
     * Voltage lost between the driving voltage and the rail, V: each mode's amplitude times its resistance. Currents of
     * rails with other turns count as what this rail sees of them; exact where all turns are equal, and for resistances.
     */
    private double fall(int rail, List<Pulse> own, double[] means, double[] volts, double inputVolts) {
        if (!railsTogether()) {
            return own.get(rail).amplitude() * (path.ownOhms() + path.sharedOhms(rail));
        }
        double sum = 0;
        for (int other = 0; other < means.length; other++) {
            sum += means[other] * path.ratio(other) / path.ratio(rail) * share(rail, other);
        }
        double mean = sum / means.length;
        double commonOhms = path.ownOhms() + means.length * path.sharedOhms(rail);
        double common = carrying(mean, commonOhms, means.length, rail, volts, inputVolts)
                        .amplitude()
                * commonOhms;
        double difference = means[rail] - mean;
        double apart = Math.signum(difference)
                * carrying(Math.abs(difference), path.ownOhms(), 0, rail, volts, inputVolts)
                        .amplitude()
                * path.ownOhms();
        return common + apart;
    }

    /** How much of another rail's mean flows together with this rail's pulses, against that rail's own mean. */
    private double share(int rail, int other) {
        return rail == other ? 1 : period(rail) == period(other) ? 1 : path.periodSeconds() / 2 / period(rail);
    }

    private List<Pulse> pulsesOf(double[] means, double[] volts, double inputVolts) {
        List<Pulse> list = new ArrayList<>();
        int together = railsTogether() ? means.length : 1;
        for (int rail = 0; rail < means.length; rail++) {
            double ohms = path.ownOhms() + together * path.sharedOhms(rail);
            list.add(carrying(means[rail], ohms, together, rail, volts, inputVolts));
        }
        return list;
    }

    private Pulse carrying(double mean, double ohms, int together, int rail, double[] volts, double inputVolts) {
        double henries = path.pulseHenries(rail, together, volts.length);
        double tau = ohms > 0 ? henries / ohms : 0;
        double emptying = volts[rail] + path.ratio(rail) * inputVolts;
        double fall = emptying > 0 ? henries / emptying : 0;
        return Pulse.carrying(mean, tau, path.onSeconds(), period(rail), fall);
    }

    private boolean railsTogether() {
        return !(pulses instanceof Deviation.HalfSecondary);
    }

    /** From pulse to pulse of one rail, s. */
    private double period(int rail) {
        boolean every = pulses instanceof Deviation.AllPulses
                || pulses instanceof Deviation.HalfOfRail half && !half.rail().equals(names.get(rail));
        return every ? path.periodSeconds() / 2 : path.periodSeconds();
    }

    private Conversion conversion(double[] means, double[] volts, List<Pulse> own) {
        List<Feed> feeds = new ArrayList<>();
        double sumOfRms = 0;
        double sumOfSquares = 0;
        double mean = 0;
        for (int rail = 0; rail < means.length; rail++) {
            double square = own.get(rail).meanSquare();
            double capacitor = Math.max(0, square - means[rail] * means[rail]);
            feeds.add(Feed.free(volts[rail], square, capacitor, 1 / period(rail)));
            double ratio = path.ratio(rail);
            sumOfRms += ratio * Math.sqrt(square);
            sumOfSquares += ratio * ratio * square;
            mean += ratio * means[rail];
        }
        double together = railsTogether() ? sumOfRms * sumOfRms : sumOfSquares;
        return new Conversion(feeds, together, mean);
    }
}
