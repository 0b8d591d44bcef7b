package railwitness.drivers.rehearsal;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.World;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.scpi.Numeric;

/** A multimeter whose leads are on one channel; what it reads depends on the function it was told. */
public final class VirtualMeter extends VirtualInstrument {
    private static final double OVER_RANGE = 1.2;
    private static final double DIGITS = 2e6;
    private static final String NO_NUMBER = "9.91E37";

    /** What it can measure, with the ranges it has. */
    private enum Function {
        VOLTAGE_DC("VOLT:DC", Quantity.VOLTAGE, 0.01, 0.1, 1, 10, 100, 1000),
        VOLTAGE_AC("VOLT:AC", Quantity.RIPPLE, 0.1, 1, 10, 100, 1000),
        CURRENT_DC("CURR:DC", Quantity.CURRENT, 0.01, 0.1, 1, 3, 10, 100),
        RESISTANCE("RES", Quantity.RESISTANCE, 1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7),
        TEMPERATURE("TEMP", Quantity.TEMPERATURE, 1000);

        private final String word;
        private final Quantity quantity;
        private final double[] ranges;

        Function(String word, Quantity quantity, double... ranges) {
            this.word = word;
            this.quantity = quantity;
            this.ranges = ranges;
        }

        double highest() {
            return ranges[ranges.length - 1];
        }

        /** Smallest range that holds the value. */
        double rangeFor(double value) {
            for (double range : ranges) {
                if (Math.abs(value) <= range * 1.0001) {
                    return range;
                }
            }
            return highest();
        }
    }

    private final Probe probe;
    private final Map<Function, Imperfection> errors = new EnumMap<>(Function.class);
    private final Map<Function, Double> ranges = new EnumMap<>(Function.class);
    private final Map<Function, Double> cycles = new EnumMap<>(Function.class);
    private Function function = Function.VOLTAGE_DC;
    private boolean shorted;
    private String lastAnswer = "";

    VirtualMeter(Fixture fixture, World world, LongSupplier clock, Random random) {
        super(fixture, world, clock, random);
        Channel channel = fixture.reads().isEmpty()
                ? Channel.of("input.voltage")
                : fixture.reads().get(0);
        Fixture.Leads leads = fixture.leads();
        double off = leads.shuntToleranceShare() * (2 * random.nextDouble() - 1);
        probe = new Probe(world, channel, leads.shuntOhm() * (1 + off), leads.bandLowHz(), leads.bandHighHz());
        for (Function each : Function.values()) {
            errors.put(each, new Imperfection(fixture.stated(each.quantity), random));
        }
        configuration();
        senses("VOLTage[:DC]", Function.VOLTAGE_DC);
        senses("VOLTage:AC", Function.VOLTAGE_AC);
        senses("CURRent[:DC]", Function.CURRENT_DC);
        senses("RESistance", Function.RESISTANCE);
        senses("TEMPerature", Function.TEMPERATURE);
        triggers();
        reset();
    }

    private void configuration() {
        commands().query("CONFigure?", call -> "\"" + function.word + " " + Numeric.write(range(function, 0)) + "\"");
        commands().command("[SENSe:]FUNCtion[:ON]", call -> function = named(call.word(0)));
        commands().query("[SENSe:]FUNCtion[:ON]?", call -> "\"" + function.word + "\"");
    }

    private void senses(String header, Function of) {
        commands().command("CONFigure[:SCALar]:" + header, call -> configure(of, call));
        commands().query("MEASure[:SCALar]:" + header + "?", call -> {
            configure(of, call);
            return read(true);
        });
        commands().command("[SENSe:]" + header + ":RANGe[:UPPer]", call -> setRange(of, call));
        commands().query("[SENSe:]" + header + ":RANGe[:UPPer]?", call -> Numeric.write(range(of, 0)));
        commands().command("[SENSe:]" + header + ":RANGe:AUTO", call -> {
            if (call.onOff(0)) {
                ranges.remove(of);
            }
        });
        commands().command("[SENSe:]" + header + ":NPLCycles", call -> cycles.put(of, call.number(0, 0.02, 100, 1)));
        commands().query("[SENSe:]" + header + ":NPLCycles?", call -> Numeric.write(cycles.get(of)));
        commands().command("[SENSe:]" + header + ":BANDwidth", call -> call.number(0, 1, 1e6, 20));
    }

    private void triggers() {
        commands().query("READ?", call -> read(true));
        commands().query("FETCh?", call -> read(false));
        commands().command("INITiate[:IMMediate]", call -> {});
        commands().command("INITiate:CONTinuous", call -> call.onOff(0));
        commands().command("ABORt", call -> {});
        commands().command("TRIGger:SOURce", call -> call.word(0));
        commands().command("TRIGger:COUNt", call -> call.number(0, 1, 1, 1));
        commands().query("STATus:QUEStionable:CONDition?", call -> "0");
    }

    private static Function named(String word) {
        String bare = word.replaceAll("[\"']", "").toUpperCase(Locale.ROOT);
        return switch (bare) {
            case "VOLT", "VOLTAGE", "VOLT:DC", "VOLTAGE:DC" -> Function.VOLTAGE_DC;
            case "VOLT:AC", "VOLTAGE:AC" -> Function.VOLTAGE_AC;
            case "CURR", "CURRENT", "CURR:DC", "CURRENT:DC" -> Function.CURRENT_DC;
            case "RES", "RESISTANCE" -> Function.RESISTANCE;
            case "TEMP", "TEMPERATURE" -> Function.TEMPERATURE;
            default -> throw RefusedCommand.illegal(word);
        };
    }

    private void configure(Function of, Call call) {
        if (call.has(0) && of != Function.TEMPERATURE) {
            setRange(of, call);
        } else {
            ranges.remove(of);
        }
        function = of;
        cycles.put(of, 10.0);
    }

    private void setRange(Function of, Call call) {
        double wanted = call.number(0, 0, of.highest(), -0.0);
        boolean automatic = call.word(0).toUpperCase(Locale.ROOT).matches("DEF(AULT)?|AUTO");
        if (automatic) {
            ranges.remove(of);
        } else {
            ranges.put(of, of.rangeFor(wanted));
        }
    }

    /** The range in use; without one told, that which holds the value. */
    private double range(Function of, double value) {
        return ranges.getOrDefault(of, of.rangeFor(value));
    }

    /** What a person does with its leads: clips them together, or puts them back where they were. */
    void shortLeads(boolean together) {
        synchronized (world()) {
            shorted = together;
        }
    }

    private String read(boolean triggered) {
        if (triggered) {
            busy(cycles.get(function) / fixture().leads().mainsHz() + (function == Function.VOLTAGE_AC ? 0.05 : 0));
        }
        if (function == Function.RESISTANCE || function == Function.TEMPERATURE && !probe.hasSensor()) {
            return NO_NUMBER;
        }
        if (troubles().has(Trouble.FROZEN) && !lastAnswer.isEmpty()) {
            return lastAnswer;
        }
        lastAnswer = measured();
        return lastAnswer;
    }

    private String measured() {
        boolean direct = function == Function.VOLTAGE_DC || function == Function.CURRENT_DC;
        double value = trueValue() * (direct && troubles().has(Trouble.REVERSED_LEADS) ? -1 : 1);
        double range = range(function, value);
        double shown = errors.get(function).shown(value, range, resolution(range));
        return measurement(function == Function.VOLTAGE_AC ? Math.max(0, shown) : shown, OVER_RANGE * range);
    }

    private double resolution(double range) {
        return function == Function.TEMPERATURE ? 0.01 : range / DIGITS / Math.min(1, cycles.get(function));
    }

    private double trueValue() {
        long now = nowNanos();
        return switch (function) {
            case VOLTAGE_DC -> shorted ? 0 : probe.directVolts(now);
            case VOLTAGE_AC -> shorted ? 0 : probe.alternatingVolts(now);
            case CURRENT_DC -> probe.directAmps(now);
            case TEMPERATURE -> probe.degC(now);
            case RESISTANCE -> 0;
        };
    }

    @Override
    void reset() {
        function = Function.VOLTAGE_DC;
        ranges.clear();
        for (Function each : Function.values()) {
            cycles.put(each, 10.0);
        }
    }
}
