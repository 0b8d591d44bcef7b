package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Prediction;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Transformer;

/** The rails to expect with this transformer in its converter, line by line. */
final class RailLines {
    private static final String SOURCE = "what 'check' predicts from the sheet";

    private final Design design;

    /** @param toroid its resistances and core loss stand in for what the sheet's plain keys leave out */
    RailLines(Design design, Optional<ToroidDesign> toroid) {
        this.design = toroid.isPresent() ? completed(design, toroid.get()) : design;
    }

    /** The sheet with what core and wire give where its plain keys say nothing. */
    static Design completed(Design design, ToroidDesign toroid) {
        Transformer sheet = design.transformer().orElseThrow();
        Windings windings = new Windings(toroid);
        Transformer filled = new Transformer(
                sheet.primaryTurns(),
                sheet.secondaryTurns(),
                or(sheet.primaryResistanceOhms(), windings.ohms(toroid.primary(), 20)),
                or(sheet.secondaryResistanceOhms(), windings.ohms(toroid.secondary(), 20)),
                or(sheet.coreAreaSquareMillimetres(), toroid.core().area() * 1e6),
                sheet.highestFluxTesla(),
                or(sheet.inductancePerTurnSquaredNanohenries(), toroid.core().inductancePerTurnSquared() * 1e9),
                or(sheet.coreLossWatts(), Heat.of(toroid).coreWatts()),
                sheet.leakageNanohenries());
        return new Design(
                design.unit(),
                design.converter(),
                design.input(),
                Optional.of(filled),
                design.switches(),
                design.rectifier(),
                design.filter(),
                design.rails(),
                design.connected(),
                design.limits(),
                design.coldResistance(),
                design.decision(),
                design.requirements());
    }

    private static OptionalDouble or(OptionalDouble given, double otherwise) {
        return given.isPresent() ? given : OptionalDouble.of(otherwise);
    }

    List<DesignLine> lines() {
        double nominal = design.input().nominalVolts();
        Map<String, Double> full = new LinkedHashMap<>();
        design.rails().forEach(rail -> rail.fullLoadAmperes().ifPresent(amps -> full.put(rail.name(), amps)));
        Optional<Prediction> idle = Prediction.of(design, nominal, Map.of());
        Optional<Prediction> loaded =
                full.size() == design.rails().size() ? Prediction.of(design, nominal, full) : Optional.empty();
        List<DesignLine> lines = new ArrayList<>();
        for (Rail rail : design.rails()) {
            OptionalDouble open = volts(idle, rail);
            OptionalDouble drawn = volts(loaded, rail);
            open.ifPresent(volts -> lines.add(line(rail, "no load", volts, "ratio x input less what drops")));
            drawn.ifPresent(
                    volts -> lines.add(line(rail, "full load", volts, "less what resistances and commutation drop")
                            .weak("windings and parts as the sheet has them; leads from the battery come on top")));
            if (open.isPresent() && drawn.isPresent()) {
                lines.add(line(rail, "sag", Math.abs(open.getAsDouble() - drawn.getAsDouble()), "no load - full load"));
            }
        }
        highest().ifPresent(lines::add);
        return lines;
    }

    /** Keys without which a rail under load cannot be foretold; empty where all are there. */
    List<String> missing() {
        Map<String, Double> full = new LinkedHashMap<>();
        design.rails()
                .forEach(rail -> full.put(rail.name(), rail.fullLoadAmperes().orElse(1)));
        return Prediction.of(design, design.input().nominalVolts(), full)
                .filter(prediction ->
                        prediction.railVolts().size() < design.rails().size())
                .map(Prediction::leftOut)
                .orElse(List.of());
    }

    private static OptionalDouble volts(Optional<Prediction> prediction, Rail rail) {
        return prediction.isPresent() ? prediction.get().rail(rail.name()) : OptionalDouble.empty();
    }

    private DesignLine line(Rail rail, String when, double volts, String formula) {
        return DesignLine.of(
                String.format(Locale.ROOT, "rail %s, %s", rail.name(), when),
                volts,
                "V",
                formula + ", nominal input",
                SOURCE);
    }

    private Optional<DesignLine> highest() {
        OptionalDouble volts = Prediction.highestNoLoadRailVolts(design);
        OptionalDouble rating = design.rails().stream()
                .map(design::capacitorRatingVolts)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .min();
        if (volts.isEmpty()) {
            return Optional.empty();
        }
        DesignLine line = DesignLine.of(
                        "highest rail, no load, highest input",
                        volts.getAsDouble(),
                        "V",
                        "ratio x highest input",
                        "definition")
                .weak("ringing may add a few per cent");
        return Optional.of(
                rating.isPresent() ? line.atMost(rating.getAsDouble(), "rating of the filter capacitors") : line);
    }
}
