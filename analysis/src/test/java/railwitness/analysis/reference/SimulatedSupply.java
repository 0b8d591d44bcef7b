package railwitness.analysis.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.ColdResistance;
import railwitness.analysis.design.Converter;
import railwitness.analysis.design.Decision;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Input;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Rectifier;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.design.Switches;
import railwitness.analysis.design.Transformer;
import railwitness.analysis.design.Unit;
import railwitness.analysis.design.UnitLimits;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * A push-pull step-up supply (4+4 : 12+12 turns, 25 kHz, capacitor input, two rails of 37 V and 4 A) as a circuit
 * simulator (ngspice) works it out: healthy and with faults, loads, line and unequal loads. The table gives means that
 * have settled to 0.01 %. The design values are those of the circuit.
 */
public final class SimulatedSupply {
    private static final OptionalDouble UNKNOWN = OptionalDouble.empty();
    private static final double DIODE_SCALE_AMPERES = 1e-10;
    private static final double DIODE_SLOPE_VOLTS = 1.1 * 0.025852;

    private SimulatedSupply() {}

    /** Row by row: column name to text. */
    public static List<Map<String, String>> rows() {
        List<Map<String, String>> rows = new ArrayList<>();
        List<String> lines = lines("results.csv");
        String[] names = lines.get(1).split(",");
        for (String line : lines.subList(2, lines.size())) {
            String[] cells = line.split(",");
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < names.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    /** The row of that name. */
    public static Map<String, String> row(String name) {
        return rows().stream()
                .filter(row -> row.get("name").equals(name))
                .findFirst()
                .orElseThrow();
    }

    public static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    /** Forward drop of the circuit's diodes without their series resistance (Shockley's law at 27 degC), V. */
    public static double diodeVolts(double amperes) {
        return DIODE_SLOPE_VOLTS * Math.log(amperes / DIODE_SCALE_AMPERES);
    }

    /** The circuit's design sheet, its diodes dropping 0.70 V before their slope. */
    public static Design design() {
        return design(0.70, List.of());
    }

    /** The circuit's design sheet with another drop, V, and requirements. */
    public static Design design(double dropVolts, List<SheetRequirement> requirements) {
        return new Design(
                new Unit("Simulated supply", Optional.empty(), Optional.empty(), Optional.empty()),
                new Converter(FilterInput.CAPACITOR, false, of(25_000), of(0.45), UNKNOWN, of(0.12)),
                new Input(13.8, of(10.5), of(14.4), of(30), UNKNOWN, of(4700), of(0.012), UNKNOWN),
                Optional.of(
                        new Transformer(4, 12, of(0.0022), of(0.028), UNKNOWN, UNKNOWN, of(5000), of(1.9), of(2520))),
                Optional.of(new Switches(of(0.005), of(75), of(0))),
                Optional.of(new Rectifier(of(dropVolts), of(0.02), of(200))),
                Optional.of(new Filter(of(4400), of(0.015), UNKNOWN, of(3300), of(1.5), of(0.004))),
                List.of(new Rail("plus", 36.9, of(4)), new Rail("minus", -36.9, of(4))),
                List.of(),
                UnitLimits.none(),
                ColdResistance.none(),
                Decision.GUARD_BAND_U,
                requirements);
    }

    /** A row as an operating point of a stage, every value with the given relative standard uncertainty. */
    public static OperatingPoint point(Map<String, String> row, String stage, double seconds, double relative) {
        return OperatingPoint.of(stage, row.get("name"))
                .during(seconds, seconds + 1)
                .setVolts(number(row, "vsrc_set_V"))
                .inputVoltage(value(row, "vin_avg_V", relative))
                .inputCurrent(value(row, "iin_avg_A", relative))
                .railVoltage("plus", value(row, "vpos_avg_V", relative))
                .railVoltage("minus", value(row, "vneg_avg_V", relative))
                .railCurrent("plus", value(row, "ipos_A", relative))
                .railCurrent("minus", value(row, "ineg_A", relative))
                .ripple("plus", value(row, "ripple_pos_rms_V", 10 * relative))
                .ripple("minus", value(row, "ripple_neg_rms_V", 10 * relative))
                .build();
    }

    /** The healthy unit: load sweep, line sweep and unequal loads. */
    public static List<OperatingPoint> healthy(double relative) {
        List<OperatingPoint> points = new ArrayList<>();
        for (Map<String, String> row : rows()) {
            String stage =
                    switch (row.get("group")) {
                        case "load" -> row.get("name").equals("load_000") ? "no-load" : "load-sweep";
                        case "line" -> "line-sweep";
                        case "unbalanced" -> "cross-load";
                        default -> "";
                    };
            if (!stage.isEmpty()) {
                points.add(point(row, stage, 10.0 * points.size(), relative));
            }
        }
        return points;
    }

    /** The load sweep of a faulty unit: {@code fault_a} and so on. */
    public static List<OperatingPoint> faulty(String fault, double relative) {
        List<OperatingPoint> points = new ArrayList<>();
        for (Map<String, String> row : rows()) {
            if (row.get("name").startsWith(fault + "_")) {
                String stage = row.get("name").endsWith("_000") ? "no-load" : "load-sweep";
                points.add(point(row, stage, 10.0 * points.size(), relative));
            }
        }
        return points;
    }

    private static Estimate value(Map<String, String> row, String column, double relative) {
        double value = number(row, column);
        return relative == 0
                ? Estimate.exact(value)
                : Estimate.of(
                        value,
                        Influence.normal(column + " " + row.get("name"), relative, "1")
                                .times(value));
    }

    /** Lines of one of the resource files beside the tests. */
    public static List<String> lines(String file) {
        try (InputStream in = SimulatedSupply.class.getResourceAsStream("/railwitness/analysis/design-a/" + file);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines().toList();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static OptionalDouble of(double value) {
        return OptionalDouble.of(value);
    }
}
