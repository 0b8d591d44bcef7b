package railwitness.analysis.contradiction;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Set;
import railwitness.analysis.design.Rail;

/** Readings that stand in each other's place. */
final class Exchange {
    /** Set points must differ by this share of the largest to tell two loads apart. */
    private static final double APART = 0.2;

    private static final double NEAR = 0.06;
    private static final double ROUGHLY = 0.25;
    private static final double GROWS = 1.5;
    private static final double STAYS = 1.25;

    private final Evidence evidence;
    private final Polarity polarity;

    Exchange(Evidence evidence, Polarity polarity) {
        this.evidence = evidence;
        this.polarity = polarity;
    }

    List<Contradiction> find() {
        List<Contradiction> found = new ArrayList<>();
        for (int i = 0; i < evidence.rails.size(); i++) {
            for (int j = i + 1; j < evidence.rails.size(); j++) {
                rails(evidence.rails.get(i), evidence.rails.get(j), found);
                loads(evidence.rails.get(i), evidence.rails.get(j), found);
            }
        }
        input(found);
        evidence.rails.forEach(rail -> inputAndRail(rail, found));
        return found;
    }

    /** Both of opposite signs read wrong: reversed both, or each on the other; unequal loads tell which. */
    private void rails(String one, String other, List<Contradiction> found) {
        boolean opposite = evidence.sign(one).orElse(0) * evidence.sign(other).orElse(0) < 0;
        if (opposite && polarity.wrong(one) && polarity.wrong(other) && sagsWithTheOthersLoad(one, other) >= 0) {
            found.add(new Contradiction(
                    ContradictionCode.EXCHANGED_LEADS,
                    "the " + one + " meter reads as the " + other + " rail would, and the " + other + " meter as the "
                            + one + " rail: the two are exchanged, or both reversed",
                    "where the leads of the " + one + " and the " + other + " meter go, and their channels",
                    Set.of(one + ".voltage", other + ".voltage")));
        }
    }

    /** Above zero: each meter falls with the other's load; below: with its own; zero: loads were always alike. */
    private double sagsWithTheOthersLoad(String one, String other) {
        double sum = 0;
        double size = 0;
        for (Testimony step : evidence.steps) {
            if (!evidence.isUp(step, one) || !evidence.isUp(step, other)) {
                continue;
            }
            double volts = Math.abs(step.value(one + ".voltage").getAsDouble())
                    - Math.abs(step.value(other + ".voltage").getAsDouble());
            double amps = amps(step, one) - amps(step, other);
            sum += volts * amps;
            size += Math.abs(amps) * (evidence.honest(step, one + ".voltage") / 4);
        }
        return Math.abs(sum) > size ? sum : 0;
    }

    private static double amps(Testimony step, String rail) {
        return step.point().rail(rail).map(at -> at.current().value()).orElse(0.0);
    }

    private void loads(String one, String other, List<Contradiction> found) {
        List<Testimony> crossed = new ArrayList<>();
        int straight = 0;
        for (Testimony step : evidence.steps) {
            Double setOne = step.setAmps().get(one);
            Double setOther = step.setAmps().get(other);
            boolean read = step.value(one + ".current").isPresent()
                    && step.value(other + ".current").isPresent();
            if (setOne == null
                    || setOther == null
                    || !read
                    || !evidence.isUp(step, one)
                    || !evidence.isUp(step, other)) {
                continue;
            }
            double most = Math.max(setOne, setOther);
            if (Math.abs(setOne - setOther) <= APART * most) {
                continue;
            }
            double readOne = Math.abs(step.value(one + ".current").getAsDouble());
            double readOther = Math.abs(step.value(other + ".current").getAsDouble());
            double asSet = Math.abs(readOne - setOne) + Math.abs(readOther - setOther);
            double across = Math.abs(readOne - setOther) + Math.abs(readOther - setOne);
            if (across < 2 * NEAR * most && across < asSet / 3) {
                crossed.add(step);
            } else {
                straight++;
            }
        }
        if (!crossed.isEmpty() && crossed.size() > straight) {
            found.add(new Contradiction(
                    ContradictionCode.EXCHANGED_LEADS,
                    "the " + one + " current reads what the " + other + " load is set to, and the other way round ("
                            + Evidence.at(crossed) + ")",
                    "whether the two loads, their ports or the leads of their shunts are exchanged",
                    Set.of(one + ".current", other + ".current")));
        }
    }

    /** With growing load the 'voltage' grows while the 'current' stays: each is the other. */
    private void input(List<Contradiction> found) {
        DoubleSummaryStatistics volts = new DoubleSummaryStatistics();
        DoubleSummaryStatistics amps = new DoubleSummaryStatistics();
        Testimony least = null;
        Testimony most = null;
        for (Testimony step : evidence.steps) {
            if (!evidence.allUp(step) || step.point().stage().equals("line-sweep") || Evidence.outWatts(step) <= 1) {
                continue;
            }
            volts.accept(step.point().input().voltage().value());
            amps.accept(step.point().input().current().value());
            least = least == null || Evidence.outWatts(step) < Evidence.outWatts(least) ? step : least;
            most = most == null || Evidence.outWatts(step) > Evidence.outWatts(most) ? step : most;
        }
        if (volts.getCount() < 3 || Evidence.outWatts(most) < 2 * Evidence.outWatts(least)) {
            return;
        }
        boolean grows = most.point().input().voltage().value()
                > GROWS * Math.abs(least.point().input().voltage().value());
        boolean stays = amps.getMin() > 0 && amps.getMax() < STAYS * amps.getMin();
        if (grows && stays) {
            found.add(new Contradiction(
                    ContradictionCode.EXCHANGED_LEADS,
                    "with growing load the input voltage grows to " + Evidence.volts(volts.getMax())
                            + " while the input current stays near " + Evidence.amps(amps.getMin())
                            + ": each reads as the other would",
                    "whether the two input meters, their ports or their columns are exchanged",
                    Set.of(Evidence.INPUT_VOLTS, Evidence.INPUT_AMPS)));
        }
    }

    /** The input meter sits on the rail and the rail's meter on the input. */
    private void inputAndRail(String rail, List<Contradiction> found) {
        double nominal =
                evidence.design.map(sheet -> sheet.input().nominalVolts()).orElse(0.0);
        double railVolts = evidence.design
                .flatMap(sheet -> sheet.rail(rail))
                .map(Rail::nominalVolts)
                .map(Math::abs)
                .orElse(0.0);
        if (nominal <= 0 || Math.max(nominal, railVolts) < GROWS * Math.min(nominal, railVolts)) {
            return;
        }
        List<Testimony> running = evidence.steps.stream()
                .filter(step -> !Evidence.standby(step) && !step.point().stage().equals("line-sweep"))
                .filter(step -> Evidence.outWatts(step) > 1
                        && step.value(rail + ".voltage").isPresent())
                .toList();
        boolean exchanged = running.size() >= 2
                && running.stream()
                        .allMatch(step -> near(step.point().input().voltage().value(), railVolts)
                                && near(Math.abs(step.value(rail + ".voltage").getAsDouble()), nominal));
        if (exchanged) {
            found.add(new Contradiction(
                    ContradictionCode.EXCHANGED_LEADS,
                    "the input meter reads what the " + rail + " rail should have, and the " + rail
                            + " meter what the input should have (" + Evidence.at(running) + ")",
                    "where the leads of the input meter and of the " + rail + " meter go, and their channels",
                    Set.of(Evidence.INPUT_VOLTS, rail + ".voltage")));
        }
    }

    private static boolean near(double value, double expected) {
        return Math.abs(Math.abs(value) - expected) <= ROUGHLY * expected;
    }
}
