package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.NotFound;

/** What rests on what: a figure whose readings contradict each other, or another's, is no figure. */
public final class Rests {
    private Rests() {}

    /** The figures that are left; the others are not found, with the contradiction as reason. */
    public static Figures keep(Figures figures, List<String> rails, List<Contradiction> contradictions) {
        List<Figure> kept = new ArrayList<>();
        List<NotFound> missing = new ArrayList<>();
        figures.notFound().forEach(one -> missing.add(sameReason(one, rails, contradictions)));
        for (Figure figure : figures.found()) {
            Set<String> channels = channels(figure.name(), figure.rail(), rails);
            Optional<Contradiction> against = contradictions.stream()
                    .filter(one -> one.concerns(channels))
                    .findFirst();
            if (against.isPresent()) {
                missing.add(new NotFound(
                        figure.name(),
                        figure.rail(),
                        "contradicted: " + against.get().text()));
            } else {
                kept.add(figure);
            }
        }
        missing.sort(java.util.Comparator.comparing(NotFound::name));
        return new Figures(kept, missing);
    }

    /** Efficiencies that cannot be were left out before; why, the contradiction tells. */
    private static NotFound sameReason(NotFound missing, List<String> rails, List<Contradiction> contradictions) {
        if (missing.name() != FigureName.AVERAGE_EFFICIENCY && missing.name() != FigureName.FULL_LOAD_EFFICIENCY) {
            return missing;
        }
        Set<String> channels = channels(missing.name(), missing.rail(), rails);
        return contradictions.stream()
                .filter(one -> one.code() == ContradictionCode.POWER_BALANCE && one.concerns(channels))
                .findFirst()
                .map(one -> new NotFound(missing.name(), missing.rail(), "contradicted: " + one.text()))
                .orElse(missing);
    }

    /** The channels a figure is worked out from. */
    static Set<String> channels(FigureName name, Optional<String> rail, List<String> rails) {
        Set<String> channels = new TreeSet<>();
        switch (name) {
            case STANDBY_CURRENT -> channels.add(Evidence.INPUT_AMPS);
            case NO_LOAD_INPUT_POWER -> channels.addAll(Set.of(Evidence.INPUT_VOLTS, Evidence.INPUT_AMPS));
            case AVERAGE_EFFICIENCY, FULL_LOAD_EFFICIENCY -> {
                channels.addAll(Set.of(Evidence.INPUT_VOLTS, Evidence.INPUT_AMPS));
                rails.forEach(one -> channels.addAll(Set.of(one + ".voltage", one + ".current")));
            }
            case RIPPLE, RIPPLE_PEAK_TO_PEAK ->
                rail.ifPresent(one -> channels.addAll(Set.of(one + ".ripple", one + ".current")));
            case DRIVE_FREQUENCY, DRIVE_DUTY, VOLT_SECONDS, DRIVE_DROOP, DRAIN_SPIKE -> {}
            case PEAK_DRAIN_VOLTAGE -> channels.add(Evidence.INPUT_VOLTS);
            default -> {
                channels.add(Evidence.INPUT_VOLTS);
                List<String> concerned =
                        name == FigureName.CROSS_EFFECT || name == FigureName.CROSS_EFFECT_AS_WIRED || rail.isEmpty()
                                ? rails
                                : List.of(rail.get());
                concerned.forEach(one -> channels.addAll(Set.of(one + ".voltage", one + ".current")));
            }
        }
        return channels;
    }
}
