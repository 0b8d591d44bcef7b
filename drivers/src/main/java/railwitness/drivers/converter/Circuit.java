package railwitness.drivers.converter;

import java.util.List;
import railwitness.drivers.converter.Specimen.Rail;
import railwitness.drivers.converter.Specimen.Transformer;

/** The specimen's numbers at one pair of temperatures, laid out for the solver. Half and side are 0 or 1. */
final class Circuit {
    final Specimen specimen;
    final int rails;
    final double periodSeconds;
    final boolean chokeInput;
    /** Turns ratio of each whole secondary half. */
    private final double[] ratio;

    final double[] switchOhm;
    final double primaryOhm;
    /** What the switches leak at this temperature, W. */
    final double runawayWatts;

    final double esrInOhm;
    final double[] secondaryOhm;
    private final double primaryHenry;
    private final double secondaryHenry;
    final double diodeDropVolts;
    final double diodeOhm;
    final double logVolts;
    /** Conductance across a primary half during a pulse, S. */
    final double coreSiemens;

    final double shortedTurnSiemens;
    final boolean[] driven;
    final double[] chokeHenry;
    final double[] esrOhm;
    /** Per side and rail: turns ratio of what feeds it. */
    final double[][] reflect;
    /** Per side: inductances of the rails' loops, with what they share. */
    final double[][][] henry;
    /** Per side: resistances of the rails' loops without the primary's. */
    final double[][][] ohm;

    Circuit(Specimen specimen, double transformerDegC, double heatsinkDegC) {
        this.specimen = specimen;
        rails = specimen.rails().size();
        Transformer core = specimen.transformer();
        periodSeconds = 1 / specimen.drive().frequencyHz();
        chokeInput = specimen.filter() == Specimen.Filter.CHOKE;
        ratio = new double[] {core.secondaryTurns1() / core.primaryTurns(), core.secondaryTurns2() / core.primaryTurns()
        };
        double reference = specimen.thermal().referenceDegC();
        double copper = 1 + core.copperPerKelvin() * (transformerDegC - reference);
        double sinkRise = heatsinkDegC - reference;
        switchOhm = new double[] {
            specimen.side1().onOhm() * (1 + specimen.side1().perKelvin() * sinkRise),
            specimen.side2().onOhm() * (1 + specimen.side2().perKelvin() * sinkRise)
        };
        driven = new boolean[] {specimen.side1().driven(), specimen.side2().driven()};
        primaryOhm = core.primaryOhm() * copper + specimen.flaws().jointOhm(heatsinkDegC);
        runawayWatts = specimen.flaws().leakWatts(heatsinkDegC);
        secondaryOhm = new double[] {core.secondaryOhm1() * copper, core.secondaryOhm2() * copper};
        esrInOhm = specimen.input().capacitorEsrOhm();
        primaryHenry = core.primaryLeakageHenry();
        secondaryHenry = core.secondaryLeakageHenry();
        diodeDropVolts = Math.max(
                0, specimen.rectifier().dropVolts() + specimen.rectifier().dropPerKelvin() * sinkRise);
        diodeOhm = specimen.rectifier().slopeOhm();
        logVolts = specimen.rectifier().logVolts();
        coreSiemens = 1 / core.coreOhm() / (2 * specimen.drive().duty());
        chokeHenry = railList().stream()
                .mapToDouble(rail -> Math.max(rail.chokeHenry(), 1e-9))
                .toArray();
        esrOhm = railList().stream().mapToDouble(Rail::capacitorEsrOhm).toArray();
        reflect = new double[2][rails];
        henry = new double[2][rails][rails];
        ohm = new double[2][rails][rails];
        shortedTurnSiemens = 1 / (core.shortedTurnOhm() * core.primaryTurns() * core.primaryTurns());
        layOut();
    }

    /** Which secondary half feeds the rail while the side conducts. */
    int half(int side, int rail) {
        return rail(rail).negative() ? 1 - side : side;
    }

    Rail rail(int index) {
        return specimen.rails().get(index);
    }

    List<Rail> railList() {
        return specimen.rails();
    }

    /** Turns ratio of what a secondary half gives the rail. */
    double ratio(int half, int rail) {
        return ratio[half] * rail(rail).turnsShare();
    }

    /** The highest turns ratio of any rail. */
    double highestRatio() {
        double most = 0;
        for (int r = 0; r < rails; r++) {
            most = Math.max(most, Math.max(ratio(0, r), ratio(1, r)));
        }
        return most;
    }

    double diodeExtraOhm(int half, int rail) {
        return half == 0 ? rail(rail).diodeExtraOhm1() : rail(rail).diodeExtraOhm2();
    }

    /** Whether that half reaches the rail at all. */
    boolean connected(int half, int rail) {
        return diodeExtraOhm(half, rail) + secondaryOhm[half] < 1e3;
    }

    /** Drop of a diode without its resistance, V. */
    double drop(double amps) {
        return Math.max(0, diodeDropVolts + logVolts * Math.log(Math.max(amps, 1e-3)));
    }

    /** Drop that a hardly conducting diode has, V. */
    double idleDrop() {
        return drop(0.01);
    }

    /** Energy of leakages and chokes with these rail currents while the side conducts, J. */
    double storedJoule(int side, double[] amps) {
        double sum = 0;
        for (int r = 0; r < rails; r++) {
            for (int q = 0; q < rails; q++) {
                sum += henry[side][r][q] * amps[r] * amps[q] / 2;
            }
        }
        return sum;
    }

    /** Energy of the filter chokes alone, J. */
    double chokeJoule(double[] amps) {
        double sum = 0;
        for (int r = 0; r < rails; r++) {
            sum += chokeHenry[r] * amps[r] * amps[r] / 2;
        }
        return sum;
    }

    private double henry(int side, int r, int q) {
        int halfR = half(side, r);
        int halfQ = half(side, q);
        double shared = ratio(halfR, r) * ratio(halfQ, q) * primaryHenry;
        double own = halfR == halfQ ? secondaryHenry * rail(r).turnsShare() * rail(q).turnsShare() : 0;
        return shared + own + (r == q ? chokeHenry[r] : 0);
    }

    private double ohm(int side, int r, int q) {
        int halfR = half(side, r);
        double winding = halfR == half(side, q) ? secondaryOhm[halfR] : 0;
        return winding + (r == q ? ownOhm(halfR, r) : 0);
    }

    private void layOut() {
        for (int side = 0; side < 2; side++) {
            for (int r = 0; r < rails; r++) {
                reflect[side][r] = ratio(half(side, r), r);
                for (int q = 0; q < rails; q++) {
                    henry[side][r][q] = henry(side, r, q);
                    ohm[side][r][q] = ohm(side, r, q);
                }
            }
        }
    }

    /** What only this rail's current flows through, ohm. */
    double ownOhm(int half, int rail) {
        return diodeOhm
                + diodeExtraOhm(half, rail)
                + rail(rail).chokeOhm()
                + rail(rail).capacitorEsrOhm();
    }
}
