package railwitness.logger.recording.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Remark;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.ResistorBank;
import railwitness.logger.recording.plan.HoldPart;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.Step;

/**
 * What the plan puts into the load resistors, against what they may take. A wire-wound resistor bears a few times its
 * rating for seconds only (five times for five seconds is the usual short-time test; from memory), so several times the
 * rating is refused and anything above it is said.
 */
final class ResistorCheck {
    private static final double NEVER = 5;

    private final Design design;
    private final List<Remark> remarks = new ArrayList<>();

    private ResistorCheck(Design design) {
        this.design = design;
    }

    static List<Remark> of(BenchSheet bench, Design design, Plan plan) {
        ResistorCheck check = new ResistorCheck(design);
        for (int place = 0; place < bench.banks().size(); place++) {
            check.bank(place, bench.banks().get(place), plan);
        }
        return List.copyOf(check.remarks);
    }

    /** One resistor in one step. */
    private record Burden(Step step, double ohms, double watts) {}

    private void bank(int place, ResistorBank bank, Plan plan) {
        if (plan.holds().values().stream()
                .flatMap(hold -> hold.cycle().stream())
                .anyMatch(HoldPart::off)) {
            remarks.add(new Remark(
                    Remark.Weight.CANNOT_BE,
                    "[[resistor_bank]]",
                    place,
                    "rail",
                    "the plan has off periods, after which the unit comes up without load, and the resistor of rail "
                            + bank.rail() + " stays on: take a programmable load, or leave the off periods out"));
        }
        if (bank.ratedWatts().isEmpty() || design.rail(bank.rail()).isEmpty()) {
            return;
        }
        Optional<Burden> worst = Optional.empty();
        for (Step step : plan.steps(SheetsCheck.rating(design))) {
            double amps = step.loadAmps().getOrDefault(bank.rail(), 0.0);
            if (amps > 0) {
                Burden burden = burden(step, bank, amps);
                worst = worst.filter(other -> other.watts() >= burden.watts()).or(() -> Optional.of(burden));
            }
        }
        double rated = bank.ratedWatts().getAsDouble();
        worst.filter(burden -> burden.watts() > rated).ifPresent(burden -> say(place, bank, burden, rated));
    }

    private Burden burden(Step step, ResistorBank bank, double amps) {
        Rail rail = design.rail(bank.rail()).orElseThrow();
        double nominal = Math.abs(rail.nominalVolts());
        double ohms = bank.nearest(nominal / amps);
        double follows =
                design.regulates(rail) ? 1 : step.inputVolts() / design.input().nominalVolts();
        double volts = nominal * follows;
        return new Burden(step, ohms, volts * volts / ohms);
    }

    private void say(int place, ResistorBank bank, Burden burden, double rated) {
        boolean never = burden.watts() > NEVER * rated;
        Duration on = burden.step()
                .hold()
                .plus(burden.step().timing().settleAtMost())
                .plus(burden.step().timing().average());
        remarks.add(new Remark(
                never ? Remark.Weight.CANNOT_BE : Remark.Weight.LOOK,
                "[[resistor_bank]]",
                place,
                "rating_W",
                String.format(
                        Locale.ROOT,
                        "%s %s puts some %.0f W into %s ohm on the %s rail, rated %s W, for up to %d s: %s",
                        burden.step().stage(),
                        burden.step().name(),
                        burden.watts(),
                        plain(burden.ohms()),
                        bank.rail(),
                        plain(rated),
                        on.toSeconds(),
                        never
                                ? "take resistors that bear it"
                                : "it gets very hot and drifts; shorten the step, cool it or take larger ones")));
    }

    private static String plain(double value) {
        return new BigDecimal(value, new MathContext(4)).stripTrailingZeros().toPlainString();
    }
}
