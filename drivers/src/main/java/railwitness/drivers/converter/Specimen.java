package railwitness.drivers.converter;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * All physical parameters of a push-pull step-up converter: a centre-tapped primary with a switch at each end, a
 * centre-tapped secondary of which each half feeds every rail, and a filter per rail. SI units. A fault is a change of
 * these numbers; what is connected to what never changes.
 *
 * <p>{@link #usual()} is the one place of the defaults; the {@code with...} methods change one group at a time.
 *
 * @param side1 the switch that drives the first half of the primary
 * @param side2 the switch that drives the second half
 * @param rails 1 to 4 rails with different names
 * @param flaws what a sound unit has none of
 */
public record Specimen(
        Drive drive,
        Input input,
        Transformer transformer,
        Switch side1,
        Switch side2,
        Rectifier rectifier,
        Filter filter,
        List<Rail> rails,
        Thermal thermal,
        Flaws flaws) {

    /** A resistance that stands for an open connection, ohm. */
    public static final double OPEN_OHM = 1e9;

    /** What the rectifier feeds. */
    public enum Filter {
        /** The filter capacitor at once: the rail follows the peak of the winding. */
        CAPACITOR,
        /** A choke first: the rail follows the mean of the winding. */
        CHOKE
    }

    /**
     * Drive and control.
     *
     * @param frequencyHz full cycles of the transformer per second, 1 000 to 1 000 000
     * @param duty share of the cycle in which one switch is on, 0.05 to 0.495; of a regulated unit the largest
     * @param startVolts input voltage at which the unit starts, V, above dropOutVolts
     * @param dropOutVolts input voltage below which it stops, V, above zero
     * @param softStartSeconds time in which the rails are led up, s, zero or more
     * @param controlAmps what drive and control draw while it runs, A
     * @param gateWatts gate and switching loss while it runs, W
     * @param standbyAmps what the unit drains while it is off, A
     * @param regulatedVolts what a regulated unit holds the mean of its rails' magnitudes at, V; empty for none
     */
    public record Drive(
            double frequencyHz,
            double duty,
            double startVolts,
            double dropOutVolts,
            double softStartSeconds,
            double controlAmps,
            double gateWatts,
            double standbyAmps,
            OptionalDouble regulatedVolts) {
        /** The same that starts and stops at other input voltages. */
        Drive withLockOut(double start, double stop) {
            return new Drive(
                    frequencyHz,
                    duty,
                    start,
                    stop,
                    softStartSeconds,
                    controlAmps,
                    gateWatts,
                    standbyAmps,
                    regulatedVolts);
        }

        public Drive {
            within("frequencyHz", frequencyHz, 1e3, 1e6);
            within("duty", duty, 0.05, 0.495);
            within("dropOutVolts", dropOutVolts, 0.1, 1000);
            within("startVolts", startVolts, dropOutVolts, 1000);
            within("softStartSeconds", softStartSeconds, 0, 60);
            within("controlAmps", controlAmps, 0, 100);
            within("gateWatts", gateWatts, 0, 1000);
            within("standbyAmps", standbyAmps, 0, 10);
            regulatedVolts.ifPresent(volts -> within("regulatedVolts", volts, 0.1, 2000));
        }
    }

    /**
     * From the source to the centre tap.
     *
     * @param leadOhm both leads from the source to the unit's terminals, 0.1 mohm or more
     * @param capacitorFarad input capacitor at the terminals, above zero
     * @param capacitorEsrOhm its series resistance
     */
    public record Input(double leadOhm, double capacitorFarad, double capacitorEsrOhm) {
        public Input {
            within("leadOhm", leadOhm, 1e-4, 10);
            within("capacitorFarad", capacitorFarad, 1e-6, 10);
            within("capacitorEsrOhm", capacitorEsrOhm, 0, 10);
        }
    }

    /**
     * The transformer. Resistances are those at the thermal reference temperature.
     *
     * @param primaryTurns turns of one primary half
     * @param secondaryTurns1 turns of the secondary's first half
     * @param secondaryTurns2 turns of its second half
     * @param primaryOhm one primary half
     * @param secondaryOhm1 secondary's first half, with whatever is in series with it
     * @param secondaryOhm2 second half
     * @param primaryLeakageHenry leakage that all rails share, seen at the primary
     * @param secondaryLeakageHenry leakage in series with one secondary half
     * @param magnetisingHenry inductance of one primary half
     * @param saturationVoltSeconds flux linkage of a primary half at which the core saturates, V s
     * @param coreOhm resistance across one primary half that stands for the core's loss (it grows as V squared)
     * @param shortedTurnOhm resistance that closes one turn; {@link #OPEN_OHM} when there is none
     * @param peakCharging how far ringing lifts an unloaded rail, as a share of it, 0 to 0.2
     * @param ringAmps current with which the ringing starts each pulse of a capacitor-input rectifier, A
     * @param copperPerKelvin temperature coefficient of the windings, 1/K
     */
    public record Transformer(
            double primaryTurns,
            double secondaryTurns1,
            double secondaryTurns2,
            double primaryOhm,
            double secondaryOhm1,
            double secondaryOhm2,
            double primaryLeakageHenry,
            double secondaryLeakageHenry,
            double magnetisingHenry,
            double saturationVoltSeconds,
            double coreOhm,
            double shortedTurnOhm,
            double peakCharging,
            double ringAmps,
            double copperPerKelvin) {
        public Transformer {
            within("primaryTurns", primaryTurns, 1, 10_000);
            within("secondaryTurns1", secondaryTurns1, 1, 10_000);
            within("secondaryTurns2", secondaryTurns2, 1, 10_000);
            within("primaryOhm", primaryOhm, 1e-6, 100);
            within("secondaryOhm1", secondaryOhm1, 1e-6, OPEN_OHM);
            within("secondaryOhm2", secondaryOhm2, 1e-6, OPEN_OHM);
            within("primaryLeakageHenry", primaryLeakageHenry, 0, 1e-3);
            within("secondaryLeakageHenry", secondaryLeakageHenry, 0, 1e-2);
            within("magnetisingHenry", magnetisingHenry, 1e-8, 10);
            within("saturationVoltSeconds", saturationVoltSeconds, 1e-7, 10);
            within("coreOhm", coreOhm, 0.01, OPEN_OHM);
            within("shortedTurnOhm", shortedTurnOhm, 1e-4, OPEN_OHM);
            within("peakCharging", peakCharging, 0, 0.2);
            within("ringAmps", ringAmps, 0, 10);
            within("copperPerKelvin", copperPerKelvin, 0, 0.02);
        }

        /** The same with other turns on the two secondary halves. */
        public Transformer withSecondaryTurns(double first, double second) {
            return new Transformer(
                    primaryTurns,
                    first,
                    second,
                    primaryOhm,
                    secondaryOhm1,
                    secondaryOhm2,
                    primaryLeakageHenry,
                    secondaryLeakageHenry,
                    magnetisingHenry,
                    saturationVoltSeconds,
                    coreOhm,
                    shortedTurnOhm,
                    peakCharging,
                    ringAmps,
                    copperPerKelvin);
        }

        /** The same with other resistances of the two secondary halves. */
        public Transformer withSecondaryOhm(double first, double second) {
            return new Transformer(
                    primaryTurns,
                    secondaryTurns1,
                    secondaryTurns2,
                    primaryOhm,
                    first,
                    second,
                    primaryLeakageHenry,
                    secondaryLeakageHenry,
                    magnetisingHenry,
                    saturationVoltSeconds,
                    coreOhm,
                    shortedTurnOhm,
                    peakCharging,
                    ringAmps,
                    copperPerKelvin);
        }

        /** The same with a core that saturates at that flux linkage, V s. */
        Transformer withSaturation(double henry, double voltSeconds) {
            return withCore(henry, voltSeconds, coreOhm);
        }

        /** The same with one turn closed by that resistance. */
        public Transformer withShortedTurn(double ohm) {
            return new Transformer(
                    primaryTurns,
                    secondaryTurns1,
                    secondaryTurns2,
                    primaryOhm,
                    secondaryOhm1,
                    secondaryOhm2,
                    primaryLeakageHenry,
                    secondaryLeakageHenry,
                    magnetisingHenry,
                    saturationVoltSeconds,
                    coreOhm,
                    ohm,
                    peakCharging,
                    ringAmps,
                    copperPerKelvin);
        }

        /** The same with another core. */
        public Transformer withCore(double henry, double voltSeconds, double lossOhm) {
            return new Transformer(
                    primaryTurns,
                    secondaryTurns1,
                    secondaryTurns2,
                    primaryOhm,
                    secondaryOhm1,
                    secondaryOhm2,
                    primaryLeakageHenry,
                    secondaryLeakageHenry,
                    henry,
                    voltSeconds,
                    lossOhm,
                    shortedTurnOhm,
                    peakCharging,
                    ringAmps,
                    copperPerKelvin);
        }
    }

    /**
     * The switch of one side, transistors in parallel taken together.
     *
     * @param onOhm resistance when on, at the thermal reference temperature
     * @param perKelvin its temperature coefficient, 1/K
     * @param offOhm resistance when off; a small one is a leak, a very small one a short
     * @param driven whether its drive reaches it
     */
    public record Switch(double onOhm, double perKelvin, double offOhm, boolean driven) {
        public Switch {
            within("onOhm", onOhm, 1e-5, 10);
            within("perKelvin", perKelvin, 0, 0.02);
            within("offOhm", offOhm, 1e-4, OPEN_OHM);
        }

        /** The same with another resistance when off. */
        public Switch withOff(double ohm) {
            return new Switch(onOhm, perKelvin, ohm, driven);
        }

        /** The same with another resistance when on. */
        public Switch withOn(double ohm) {
            return new Switch(ohm, perKelvin, offOhm, driven);
        }

        /** The same, its drive gone. */
        public Switch undriven() {
            return new Switch(onOhm, perKelvin, offOhm, false);
        }
    }

    /**
     * One rectifier diode; all are alike. Drop at i amperes: dropVolts + slopeOhm i + logVolts ln(i / 1 A).
     *
     * @param dropVolts drop at 1 A less the slope's part, V
     * @param slopeOhm series resistance
     * @param logVolts emission coefficient times thermal voltage, V; zero for a straight line
     * @param dropPerKelvin change of the drop with the heat sink's temperature, V/K, usually below zero
     */
    public record Rectifier(double dropVolts, double slopeOhm, double logVolts, double dropPerKelvin) {
        public Rectifier {
            within("dropVolts", dropVolts, 0, 5);
            within("slopeOhm", slopeOhm, 0, 10);
            within("logVolts", logVolts, 0, 0.2);
            within("dropPerKelvin", dropPerKelvin, -0.01, 0.01);
        }
    }

    /**
     * One rail with its filter.
     *
     * @param name lower-case word
     * @param negative whether it lies below ground
     * @param chokeHenry series choke, zero or more
     * @param chokeOhm its resistance
     * @param capacitorFarad filter capacitor
     * @param capacitorEsrOhm its series resistance
     * @param bleederOhm what is always across the rail
     * @param diodeExtraOhm1 extra resistance of the diode at the first secondary half; {@link #OPEN_OHM} when dead
     * @param diodeExtraOhm2 the same at the second half
     * @param diodeShortOhm direct path from the rail to ground through a shorted diode; {@link #OPEN_OHM} when sound
     * @param turnsShare turns that feed this rail over the secondary's, 0.01 to 100
     * @param heldVolts magnitude at which a series regulator behind the filter holds the rail, V; empty for none
     */
    public record Rail(
            String name,
            boolean negative,
            double chokeHenry,
            double chokeOhm,
            double capacitorFarad,
            double capacitorEsrOhm,
            double bleederOhm,
            double diodeExtraOhm1,
            double diodeExtraOhm2,
            double diodeShortOhm,
            double turnsShare,
            OptionalDouble heldVolts) {
        public Rail {
            if (!name.matches("[a-z][a-z0-9-]*")) {
                throw new IllegalArgumentException(
                        "rail name '" + name + "' must be lower-case letters, digits and hyphens");
            }
            within("chokeHenry", chokeHenry, 0, 1);
            within("chokeOhm", chokeOhm, 0, 10);
            within("capacitorFarad", capacitorFarad, 1e-7, 10);
            within("capacitorEsrOhm", capacitorEsrOhm, 0, 100);
            within("bleederOhm", bleederOhm, 1, OPEN_OHM);
            within("diodeExtraOhm1", diodeExtraOhm1, 0, OPEN_OHM);
            within("diodeExtraOhm2", diodeExtraOhm2, 0, OPEN_OHM);
            within("diodeShortOhm", diodeShortOhm, 1e-3, OPEN_OHM);
            within("turnsShare", turnsShare, 0.01, 100);
            heldVolts.ifPresent(volts -> within("heldVolts", volts, 0.1, 2000));
        }

        /** A rail on the whole secondary that nothing holds. */
        public Rail(
                String name,
                boolean negative,
                double chokeHenry,
                double chokeOhm,
                double capacitorFarad,
                double capacitorEsrOhm,
                double bleederOhm,
                double diodeExtraOhm1,
                double diodeExtraOhm2,
                double diodeShortOhm) {
            this(
                    name,
                    negative,
                    chokeHenry,
                    chokeOhm,
                    capacitorFarad,
                    capacitorEsrOhm,
                    bleederOhm,
                    diodeExtraOhm1,
                    diodeExtraOhm2,
                    diodeShortOhm,
                    1,
                    OptionalDouble.empty());
        }

        /** The same with other turns, and held by a regulator or not. */
        public Rail withOutput(double share, OptionalDouble held) {
            return new Rail(
                    name,
                    negative,
                    chokeHenry,
                    chokeOhm,
                    capacitorFarad,
                    capacitorEsrOhm,
                    bleederOhm,
                    diodeExtraOhm1,
                    diodeExtraOhm2,
                    diodeShortOhm,
                    share,
                    held);
        }

        /** What stands at the rail's terminals with this on its filter capacitor, V. */
        double outVolts(double capacitorVolts) {
            return Math.min(capacitorVolts, heldVolts.orElse(capacitorVolts));
        }

        /** The same with another filter capacitor. */
        public Rail withCapacitor(double farad, double esrOhm) {
            return new Rail(
                    name,
                    negative,
                    chokeHenry,
                    chokeOhm,
                    farad,
                    esrOhm,
                    bleederOhm,
                    diodeExtraOhm1,
                    diodeExtraOhm2,
                    diodeShortOhm,
                    turnsShare,
                    heldVolts);
        }

        /** The same with other diodes: what is in series with each, and the path of a shorted one. */
        public Rail withDiodes(double extraOhm1, double extraOhm2, double shortOhm) {
            return new Rail(
                    name,
                    negative,
                    chokeHenry,
                    chokeOhm,
                    capacitorFarad,
                    capacitorEsrOhm,
                    bleederOhm,
                    extraOhm1,
                    extraOhm2,
                    shortOhm,
                    turnsShare,
                    heldVolts);
        }
    }

    /**
     * Two bodies, each with its own way to the ambient air: the transformer, and the heat sink with switches and diodes.
     *
     * @param transformerJoulePerKelvin heat capacity
     * @param transformerKelvinPerWatt thermal resistance to ambient
     * @param heatsinkJoulePerKelvin heat capacity
     * @param heatsinkKelvinPerWatt thermal resistance to ambient
     * @param referenceDegC temperature for which resistances and drops are stated
     * @param betweenKelvinPerWatt thermal resistance from one to the other; {@link #OPEN_OHM} where they are apart
     */
    public record Thermal(
            double transformerJoulePerKelvin,
            double transformerKelvinPerWatt,
            double heatsinkJoulePerKelvin,
            double heatsinkKelvinPerWatt,
            double referenceDegC,
            double betweenKelvinPerWatt) {
        /** Two bodies that stand apart. */
        public Thermal(
                double transformerJoulePerKelvin,
                double transformerKelvinPerWatt,
                double heatsinkJoulePerKelvin,
                double heatsinkKelvinPerWatt,
                double referenceDegC) {
            this(
                    transformerJoulePerKelvin,
                    transformerKelvinPerWatt,
                    heatsinkJoulePerKelvin,
                    heatsinkKelvinPerWatt,
                    referenceDegC,
                    OPEN_OHM);
        }

        /** The same, the two bodies joined by so many kelvin per watt. */
        public Thermal joined(double kelvinPerWatt) {
            return new Thermal(
                    transformerJoulePerKelvin,
                    transformerKelvinPerWatt,
                    heatsinkJoulePerKelvin,
                    heatsinkKelvinPerWatt,
                    referenceDegC,
                    kelvinPerWatt);
        }

        public Thermal {
            within("betweenKelvinPerWatt", betweenKelvinPerWatt, 0.01, OPEN_OHM);
            within("transformerJoulePerKelvin", transformerJoulePerKelvin, 0.1, 1e6);
            within("transformerKelvinPerWatt", transformerKelvinPerWatt, 0.01, 1000);
            within("heatsinkJoulePerKelvin", heatsinkJoulePerKelvin, 0.1, 1e6);
            within("heatsinkKelvinPerWatt", heatsinkKelvinPerWatt, 0.01, 1000);
            within("referenceDegC", referenceDegC, -50, 150);
        }
    }

    /** A unit without flaws. */
    public Specimen(
            Drive drive,
            Input input,
            Transformer transformer,
            Switch side1,
            Switch side2,
            Rectifier rectifier,
            Filter filter,
            List<Rail> rails,
            Thermal thermal) {
        this(drive, input, transformer, side1, side2, rectifier, filter, rails, thermal, Flaws.NONE);
    }

    public Specimen {
        rails = List.copyOf(rails);
        within("number of rails", rails.size(), 1, 4);
        long different = rails.stream().map(Rail::name).distinct().count();
        if (different != rails.size()) {
            throw new IllegalArgumentException("rails must have different names: " + rails);
        }
    }

    /**
     * A sound supply of the usual kind: 12 V input, 4 + 4 to 12 + 12 turns, 25 kHz, two rails of about 37 V at 4 A with
     * the filter capacitor directly behind the rectifier.
     */
    public static Specimen usual() {
        Switch side = new Switch(0.005, 0.006, 10e6, true);
        return new Specimen(
                new Drive(25_000, 0.45, 9.5, 8.5, 0.5, 0.12, 0, 0.0004, OptionalDouble.empty()),
                new Input(0.020, 4700e-6, 0.012),
                new Transformer(
                        4, 12, 12, 0.0022, 0.028, 0.028, 0.12e-6, 0.36e-6, 80e-6, 2.8e-4, 95, OPEN_OHM, 0.025, 0.15,
                        0.00393),
                side,
                side,
                new Rectifier(0.655, 0.020, 0.0284, -0.0015),
                Filter.CAPACITOR,
                List.of(usualRail("plus", false), usualRail("minus", true)),
                new Thermal(250, 4.0, 400, 1.6, 25));
    }

    private static Rail usualRail(String name, boolean negative) {
        return new Rail(name, negative, 1.5e-6, 0.004, 4400e-6, 0.015, 3300, 0, 0, OPEN_OHM);
    }

    /** All parameters with the drive changed. */
    public Specimen withDrive(Drive changed) {
        return new Specimen(changed, input, transformer, side1, side2, rectifier, filter, rails, thermal, flaws);
    }

    /** All parameters with the input changed. */
    public Specimen withInput(Input changed) {
        return new Specimen(drive, changed, transformer, side1, side2, rectifier, filter, rails, thermal, flaws);
    }

    /** All parameters with the transformer changed. */
    public Specimen withTransformer(Transformer changed) {
        return new Specimen(drive, input, changed, side1, side2, rectifier, filter, rails, thermal, flaws);
    }

    /** All parameters with the two switches changed. */
    public Specimen withSides(Switch first, Switch second) {
        return new Specimen(drive, input, transformer, first, second, rectifier, filter, rails, thermal, flaws);
    }

    /** All parameters with the rectifier changed. */
    public Specimen withRectifier(Rectifier changed) {
        return new Specimen(drive, input, transformer, side1, side2, changed, filter, rails, thermal, flaws);
    }

    /** All parameters with the filter and rails changed. */
    public Specimen withRails(Filter kind, List<Rail> changed) {
        return new Specimen(drive, input, transformer, side1, side2, rectifier, kind, changed, thermal, flaws);
    }

    /** All parameters with the thermal model changed. */
    public Specimen withThermal(Thermal changed) {
        return new Specimen(drive, input, transformer, side1, side2, rectifier, filter, rails, changed, flaws);
    }

    /** All parameters with the flaws changed. */
    public Specimen withFlaws(Flaws changed) {
        return new Specimen(drive, input, transformer, side1, side2, rectifier, filter, rails, thermal, changed);
    }

    /** Changes the rail of that name. */
    public Specimen withRail(String name, UnaryOperator<Rail> change) {
        List<Rail> changed = new ArrayList<>(rails);
        changed.set(railIndex(name), change.apply(rails.get(railIndex(name))));
        return withRails(filter, changed);
    }

    /** Place of the rail in {@link #rails}; refused when there is none of that name. */
    public int railIndex(String name) {
        for (int index = 0; index < rails.size(); index++) {
            if (rails.get(index).name().equals(name)) {
                return index;
            }
        }
        throw new IllegalArgumentException("no rail '" + name + "'; there are "
                + String.join(", ", rails.stream().map(Rail::name).toList()));
    }

    private static void within(String what, double value, double lowest, double highest) {
        if (!(value >= lowest && value <= highest)) {
            throw new IllegalArgumentException(what + " " + value + " must be " + lowest + " to " + highest);
        }
    }
}
