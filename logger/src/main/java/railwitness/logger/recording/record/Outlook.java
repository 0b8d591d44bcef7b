package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.RailBounds;
import railwitness.analysis.design.Stress;
import railwitness.analysis.design.Transformer;

/** What a design sheet predicts and where a run on it would be switched off, line by line as a technician reads it. */
public final class Outlook {
    /** Tables of the keys that predictions hang on, as a person finds them in the sheet. */
    private static final Map<String, String> TABLES = Map.ofEntries(
            Map.entry("frequency_Hz", "[converter]"),
            Map.entry("duty", "[converter]"),
            Map.entry("control_A", "[converter]"),
            Map.entry("primary_resistance_ohm", "[transformer]"),
            Map.entry("secondary_resistance_ohm", "[transformer]"),
            Map.entry("leakage_nH", "[transformer]"),
            Map.entry("core_loss_W", "[transformer]"),
            Map.entry("on_resistance_ohm", "[switches]"),
            Map.entry("gate_and_switching_W", "[switches]"),
            Map.entry("drop_V", "[rectifier]"),
            Map.entry("slope_ohm", "[rectifier]"),
            Map.entry("choke_uH", "[filter]"),
            Map.entry("capacitor_uF", "[filter]"),
            Map.entry("capacitor_esr_ohm", "[filter]"));

    private static final String IDLE = "idle current";
    private static final List<String> IDLE_KEYS = List.of("control_A", "core_loss_W", "gate_and_switching_W");

    private final Design design;
    private final double highestVolts;
    private final List<String> lines = new ArrayList<>();

    private Outlook(Design design, double highestVolts) {
        this.design = design;
        this.highestVolts = highestVolts;
    }

    /** @param plannedVolts highest input of the plan, V; 0 where there is none */
    public static List<String> lines(Design design, double plannedVolts) {
        Outlook outlook = new Outlook(design, RailBounds.highestInput(design, plannedVolts));
        outlook.turns();
        outlook.predicted();
        outlook.highest();
        outlook.switchedOff();
        return List.copyOf(outlook.lines);
    }

    private void turns() {
        if (design.transformer().isEmpty()) {
            lines.add("turns: not on the sheet, so no rail is predicted");
            return;
        }
        Transformer transformer = design.transformer().get();
        Map<Integer, List<String>> byTurns = new LinkedHashMap<>();
        design.rails().forEach(rail -> byTurns.computeIfAbsent(
                        rail.secondaryTurns().orElse(transformer.secondaryTurns()), turns -> new ArrayList<>())
                .add(rail.name()));
        byTurns.forEach((turns, rails) -> lines.add(String.format(
                Locale.ROOT,
                "turns: %d to %d, ratio %.4g%s",
                transformer.primaryTurns(),
                turns,
                design.ratio(design.rail(rails.get(0)).orElseThrow()).orElseThrow(),
                byTurns.size() == 1 ? "" : ", " + String.join(", ", rails))));
    }

    private void predicted() {
        double nominal = design.input().nominalVolts();
        Optional<Prediction> idle = Prediction.of(design, nominal, Map.of());
        Map<String, Double> loads = new LinkedHashMap<>();
        design.rails().forEach(rail -> rail.fullLoadAmperes().ifPresent(amperes -> loads.put(rail.name(), amperes)));
        Optional<Prediction> full = loads.isEmpty() ? Optional.empty() : Prediction.of(design, nominal, loads);
        idle.ifPresent(at -> lines.add(volts(nominal) + ", no load: " + words(at)));
        full.ifPresent(at -> lines.add(volts(nominal) + ", full load ("
                + loads.entrySet().stream()
                        .map(load -> number(load.getValue(), "A") + " " + load.getKey())
                        .collect(Collectors.joining(", "))
                + "): " + words(at)));
        if (loads.isEmpty()) {
            lines.add("full load: not on the sheet, so no rail is loaded");
        }
        notPredicted(idle, full);
    }

    private String words(Prediction at) {
        List<String> parts = new ArrayList<>();
        for (Rail rail : design.rails()) {
            at.rail(rail.name())
                    .ifPresent(volts -> parts.add(String.format(Locale.ROOT, "%s %.1f V", rail.name(), volts)));
        }
        at.inputCurrent().ifPresent(amperes -> parts.add("input " + number(amperes, "A")));
        at.loss().ifPresent(watts -> parts.add("loss " + number(watts, "W")));
        if (at.outputWatts() > 0) {
            at.efficiency().ifPresent(share -> parts.add(percent(share)));
        }
        at.rippleRmsVolts().forEach((rail, ripple) -> {
            if (at.outputWatts() > 0) {
                parts.add(String.format(Locale.ROOT, "ripple %s %.0f mV rms", rail, milli(ripple)));
            }
        });
        return parts.isEmpty() ? "not predicted" : String.join(", ", parts);
    }

    /** What stays open, and which lines of the sheet would close it. */
    private void notPredicted(Optional<Prediction> idle, Optional<Prediction> full) {
        List<String> open = new ArrayList<>();
        if (idle.isPresent() && idle.get().inputCurrent().isEmpty()) {
            open.add(IDLE);
        }
        if (idle.isPresent() && idle.get().railVolts().size() < design.rails().size()) {
            open.add("rails without load");
        }
        if (full.isPresent() && full.get().railVolts().size() < design.rails().size()) {
            open.add("sag under load");
        }
        if (full.isPresent() && full.get().efficiency().isEmpty()) {
            open.add("losses and efficiency");
        }
        if (!open.isEmpty()) {
            boolean idleOnly = open.equals(List.of(IDLE));
            lines.add("not predicted: " + String.join(", ", open) + "; the sheet does not give "
                    + idle.orElseThrow().leftOut().stream()
                            .filter(key -> !idleOnly || IDLE_KEYS.contains(key))
                            .map(key -> TABLES.getOrDefault(key, "") + " " + key)
                            .map(String::strip)
                            .collect(Collectors.joining(", ")));
        }
    }

    private void highest() {
        Stress stress = Stress.of(design, highestVolts);
        List<String> parts = new ArrayList<>();
        if (design.rails().size() > 1) {
            stress.betweenVolts().ifPresent(volts -> parts.add(volts(volts) + " between the outermost rails"));
        }
        parts.add("a switch sees " + volts(stress.switchVolts()));
        stress.diodeVolts().ifPresent(volts -> parts.add("a diode " + volts(volts)));
        Prediction.of(design, highestVolts, Map.of())
                .map(Prediction::fluxTesla)
                .filter(OptionalDouble::isPresent)
                .ifPresent(tesla -> parts.add("the core " + number(tesla.getAsDouble(), "T") + allowedFlux()));
        lines.add(volts(highestVolts) + ", the highest input: " + String.join(", ", parts));
    }

    private String allowedFlux() {
        OptionalDouble allowed =
                design.transformer().map(Transformer::highestFluxTesla).orElse(OptionalDouble.empty());
        return allowed.isPresent() ? " of " + number(allowed.getAsDouble(), "T") + " allowed" : "";
    }

    private void switchedOff() {
        for (Rail rail : design.rails()) {
            RailBounds bounds = RailBounds.of(design, rail, highestVolts);
            lines.add("switched off: " + rail.name() + " above " + number(bounds.highVolts(), "V")
                    + (bounds.byRating() ? " (its capacitors)" : "")
                    + (bounds.lowVolts().isPresent()
                            ? ", once up below " + number(bounds.lowVolts().getAsDouble(), "V")
                            : ""));
        }
    }

    private static String volts(double volts) {
        return number(volts, "V");
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "efficiency %.1f %%", 100 * share);
    }

    private static double milli(double value) {
        return 1000 * value;
    }

    private static String number(double value, String unit) {
        String digits = String.format(Locale.ROOT, "%.4g", value);
        return (digits.contains(".") ? digits.replaceAll("0+$", "").replaceAll("\\.$", "") : digits) + " " + unit;
    }
}
