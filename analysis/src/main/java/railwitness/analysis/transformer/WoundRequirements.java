package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.verdict.Limit;
import railwitness.analysis.verdict.Requirement;

/**
 * What a transformer's design asks of its figures by itself: whole turns, and the limits beyond which {@link
 * WindingDiagnosis} accuses. A requirement of the sheet counts before one of these.
 */
public final class WoundRequirements {
    private static final double HALF_A_TURN = 0.5;
    private static final double OHMS = 1.2;
    private static final double INDUCTANCE = 0.7;
    private static final double LOSS = 1.8;
    private static final double KNEE = 0.85;

    private final WoundReport report;
    private final List<Asked> all = new ArrayList<>();

    /** One requirement with the value that answers it. */
    public record Asked(Requirement requirement, Estimate value) {}

    private WoundRequirements(WoundReport report) {
        this.report = report;
    }

    /** Those that the readings answer; none where the sheet does not give the design. */
    public static List<Asked> of(WoundReport report) {
        WoundRequirements made = new WoundRequirements(report);
        report.meant().ifPresent(made::by);
        return List.copyOf(made.all);
    }

    private void by(WoundAsMeant meant) {
        double ratio = (double) meant.secondaryTurns() / meant.primaryTurns();
        double half = HALF_A_TURN / meant.primaryTurns();
        within(FigureName.HALF_A_RATIO, new Limit(some(ratio - half), some(ratio + half)));
        within(FigureName.HALF_B_RATIO, new Limit(some(ratio - half), some(ratio + half)));
        apart(FigureName.PRIMARY_HALVES_DIFFER, meant.primaryTurns());
        apart(FigureName.SECONDARY_HALVES_DIFFER, meant.secondaryTurns());
        most(FigureName.PRIMARY_A_RESISTANCE, OHMS, meant.primaryOhms());
        most(FigureName.PRIMARY_B_RESISTANCE, OHMS, meant.primaryOhms());
        most(FigureName.SECONDARY_A_RESISTANCE, OHMS, meant.secondaryOhms());
        most(FigureName.SECONDARY_B_RESISTANCE, OHMS, meant.secondaryOhms());
        least(FigureName.MAGNETISING_INDUCTANCE, INDUCTANCE, meant.henries());
        most(FigureName.CORE_LOSS, LOSS, meant.coreWatts());
        least(FigureName.SATURATION_INPUT, KNEE, meant.kneeVolts());
    }

    private void apart(FigureName name, int turns) {
        double most = 100 * HALF_A_TURN / turns;
        within(name, new Limit(some(-most), some(most)));
    }

    private void most(FigureName name, double factor, double meant) {
        if (WoundAsMeant.known(meant)) {
            within(name, new Limit(none(), some(factor * meant)));
        }
    }

    private void least(FigureName name, double factor, double meant) {
        if (WoundAsMeant.known(meant)) {
            within(name, new Limit(some(factor * meant), none()));
        }
    }

    private static java.util.OptionalDouble some(double value) {
        double digits = Math.pow(10, 3 - Math.ceil(Math.log10(Math.max(1e-12, Math.abs(value)))));
        return java.util.OptionalDouble.of(Math.rint(value * digits) / digits);
    }

    private static java.util.OptionalDouble none() {
        return java.util.OptionalDouble.empty();
    }

    private void within(FigureName name, Limit limit) {
        report.value(name)
                .ifPresent(value -> all.add(new Asked(
                        new Requirement(name.word() + " " + limit.words(), name.word(), Optional.empty(), limit),
                        value)));
    }
}
