package railwitness.analysis.contradiction;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiPredicate;
import railwitness.analysis.design.Rail;

/** Readings that stay the same to their last digit over steps that must change them. */
final class Frozen {
    /** Share of the largest by which output power, or a current, has to change. */
    private static final double CHANGE = 0.2;

    /** Share by which an input voltage has to change. */
    private static final double VOLTS = 0.03;

    /** Share by which rails have to follow. */
    private static final double FOLLOW = 0.05;

    /** Of a change of input power, what the loads bring at least while a unit works at all. */
    private static final double BROUGHT = 0.4;

    /** With fewer digits a reading may well stay the same. */
    private static final int DIGITS = 4;

    private static final double LEAST_VOLTS = 1;

    private final Evidence evidence;

    Frozen(Evidence evidence) {
        this.evidence = evidence;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        look(Evidence.INPUT_AMPS, (a, b) -> currentMustChange(Evidence.INPUT_AMPS, a, b), found);
        look(Evidence.INPUT_VOLTS, this::voltageMustChange, found);
        if (evidence.witnesses.soleSource()) {
            look(Evidence.SUPPLY_AMPS, (a, b) -> currentMustChange(Evidence.SUPPLY_AMPS, a, b), found);
            look(Evidence.SUPPLY_VOLTS, this::setMustChange, found);
        }
        for (String rail : evidence.rails) {
            look(rail + ".voltage", (a, b) -> railMustChange(rail, a, b), found);
            look(rail + ".current", (a, b) -> loadMustChange(rail, a, b), found);
            look(rail + ".ripple", (a, b) -> turnedOn(rail, a, b), found);
        }
        return found;
    }

    private void look(String channel, BiPredicate<Testimony, Testimony> mustChange, List<Contradiction> found) {
        Set<Testimony> frozen = new LinkedHashSet<>();
        List<Testimony> still =
                evidence.steps.stream().filter(step -> step.still(channel)).toList();
        for (int i = 0; i < still.size(); i++) {
            for (int j = i + 1; j < still.size(); j++) {
                Testimony a = still.get(i);
                Testimony b = still.get(j);
                if (value(a, channel) == value(b, channel) && (mustChange.test(a, b) || mustChange.test(b, a))) {
                    frozen.add(a);
                    frozen.add(b);
                }
            }
        }
        if (!frozen.isEmpty()) {
            found.add(new Contradiction(
                    ContradictionCode.FROZEN,
                    "the " + Evidence.words(channel) + " stays at "
                            + plain(value(frozen.iterator().next(), channel))
                            + " to its last digit over steps that must change it (" + Evidence.at(frozen) + ")",
                    "whether that meter hangs, is on hold, or answers from memory; its channel; switch it off and on",
                    Set.of(evidence.used(channel))));
        }
    }

    private static double value(Testimony step, String channel) {
        return step.value(channel).getAsDouble();
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /** Much more comes out, and this current says that nothing more goes in. */
    private boolean currentMustChange(String channel, Testimony a, Testimony b) {
        double more = Evidence.outWatts(b) - Evidence.outWatts(a);
        double amps = Math.abs(value(b, channel));
        double volts = b.point().input().voltage().value();
        double in = (volts - a.point().input().voltage().value()) * amps;
        boolean outChanges = more > CHANGE * evidence.most(Evidence::outWatts) && more > 1;
        return outChanges && in < more / 2 && more / Math.max(1, Math.abs(volts)) > CHANGE * amps;
    }

    private boolean setMustChange(Testimony a, Testimony b) {
        return apart(a.point().setVolts(), b.point().setVolts(), VOLTS);
    }

    private boolean voltageMustChange(Testimony a, Testimony b) {
        boolean readBack = apart(a.value(Evidence.SUPPLY_VOLTS), b.value(Evidence.SUPPLY_VOLTS), VOLTS);
        boolean railsFollow = evidence.rails.size() > 0
                && evidence.allUp(a)
                && evidence.allUp(b)
                && sameLoads(a, b)
                && evidence.rails.stream()
                        .allMatch(rail -> apart(a.value(rail + ".voltage"), b.value(rail + ".voltage"), FOLLOW));
        boolean set = evidence.witnesses.soleSource() && setMustChange(a, b);
        return set || (evidence.witnesses.soleSource() && readBack) || railsFollow;
    }

    private boolean sameLoads(Testimony a, Testimony b) {
        return evidence.rails.stream()
                .allMatch(rail -> Math.abs(amps(a, rail) - amps(b, rail)) <= 0.02 * evidence.most(rail + ".current"));
    }

    private static double amps(Testimony step, String rail) {
        return step.point().rail(rail).map(at -> at.current().value()).orElse(0.0);
    }

    private static boolean apart(OptionalDouble a, OptionalDouble b, double share) {
        return a.isPresent()
                && b.isPresent()
                && Math.abs(a.getAsDouble() - b.getAsDouble())
                        > share * Math.max(Math.abs(a.getAsDouble()), Math.abs(b.getAsDouble()));
    }

    /** The rail itself carries much: without load of its own its ripple may lie below what the meter shows. */
    private boolean turnedOn(String rail, Testimony a, Testimony b) {
        boolean carries = amps(b, rail) > CHANGE * evidence.most(rail + ".current");
        return Evidence.standby(a) && !Evidence.standby(b) && carries && Evidence.outWatts(b) > 1 && anyReading(a, b);
    }

    private static boolean anyReading(Testimony a, Testimony b) {
        return a.means().entrySet().stream()
                .anyMatch(entry -> entry.getKey().endsWith(".ripple")
                        && entry.getValue().value().value() != 0
                        && b.means().containsKey(entry.getKey()));
    }

    private boolean railMustChange(String rail, Testimony a, Testimony b) {
        String channel = rail + ".voltage";
        double volts = Math.abs(value(a, channel));
        if (volts < LEAST_VOLTS) {
            return volts != 0
                    && Evidence.standby(a)
                    && amps(b, rail) > CHANGE * evidence.most(rail + ".current")
                    && amps(b, rail) > CHANGE;
        }
        if (Evidence.standby(a) && !Evidence.standby(b)) {
            return Evidence.outWatts(b) > 1;
        }
        if (Evidence.standby(a) || Evidence.standby(b)) {
            return false;
        }
        return followsInput(rail, a, b) || sags(rail, a, b);
    }

    /** The input moves, and the rail would have to, by its design or as another rail does. */
    private boolean followsInput(String rail, Testimony a, Testimony b) {
        boolean moves = apart(a.value(Evidence.INPUT_VOLTS), b.value(Evidence.INPUT_VOLTS), FOLLOW)
                || apart(a.point().setVolts(), b.point().setVolts(), FOLLOW);
        if (isHeld(rail)) {
            return false;
        }
        boolean byDesign = unregulated() && digits(value(a, rail + ".voltage")) >= DIGITS - 1;
        boolean byOther = evidence.rails.stream()
                .filter(other -> !other.equals(rail))
                .anyMatch(other -> apart(a.value(other + ".voltage"), b.value(other + ".voltage"), FOLLOW / 2));
        return moves && sameLoads(a, b) && (byDesign || byOther);
    }

    /** Its own load grows much and an unregulated rail does not fall by one of many digits. */
    private boolean sags(String rail, Testimony a, Testimony b) {
        double more = amps(b, rail) - amps(a, rail);
        return unregulated()
                && !isHeld(rail)
                && more > 2 * CHANGE * evidence.most(rail + ".current")
                && more > CHANGE
                && digits(value(a, rail + ".voltage")) >= DIGITS;
    }

    private boolean unregulated() {
        return evidence.design.filter(sheet -> !sheet.converter().regulated()).isPresent();
    }

    /** Behind a regulator of its own a rail may stand to its last digit. */
    private boolean isHeld(String rail) {
        return evidence.design
                .flatMap(sheet -> sheet.rail(rail))
                .flatMap(Rail::regulated)
                .orElse(false);
    }

    static int digits(double value) {
        return value == 0
                ? 0
                : new BigDecimal(Double.toString(value)).stripTrailingZeros().precision();
    }

    private boolean loadMustChange(String rail, Testimony a, Testimony b) {
        Double before = a.setAmps().get(rail);
        Double after = b.setAmps().get(rail);
        double most = evidence.steps.stream()
                .mapToDouble(step -> step.setAmps().getOrDefault(rail, 0.0))
                .max()
                .orElse(0);
        if (before != null && after != null) {
            boolean carries = evidence.isUp(a, rail) && evidence.isUp(b, rail);
            return carries && after - before > CHANGE / 2 * most && value(b, rail + ".current") != 0;
        }
        double in =
                b.point().input().power().value() - a.point().input().power().value();
        double others = evidence.rails.stream()
                .filter(other -> !other.equals(rail))
                .mapToDouble(other -> watts(b, other) - watts(a, other))
                .sum();
        boolean sameInput = !apart(a.value(Evidence.INPUT_VOLTS), b.value(Evidence.INPUT_VOLTS), 2 * FOLLOW);
        return value(b, rail + ".current") != 0
                && sameInput
                && evidence.allUp(a)
                && evidence.allUp(b)
                && in
                        > CHANGE
                                * evidence.most(
                                        step -> step.point().input().power().value())
                && others < BROUGHT * in;
    }

    private static double watts(Testimony step, String rail) {
        return step.point().rail(rail).map(at -> at.power().value()).orElse(0.0);
    }
}
