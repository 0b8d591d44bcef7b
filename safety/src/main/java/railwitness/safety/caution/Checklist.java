package railwitness.safety.caution;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What is done by hand before power, in order.
 *
 * @param checks the first are confirmed on every run, the last are cold resistances
 */
public record Checklist(List<Check> checks) {
    /** Confirmed on every run, whatever the unit. */
    public static final List<Check> ALWAYS = List.of(
            Check.confirm("A disconnect that is opened by hand stands in the unit's feed, within reach."),
            Check.confirm("A fuse stands at the source's end of the unit's input leads."),
            Check.confirm("Polarity of the input leads was checked with a meter."),
            Check.confirm(
                    "The amplifier is disconnected from the rails; only the loads of the bench sheet are on them."),
            Check.confirm("Nothing lies on or under the unit; heat sinks stand free."),
            Check.confirm("Somebody else is near and knows where the disconnect is."));

    /** What must be so before a unit under power may be left, besides (common practice, no source). */
    public static final List<Check> UNATTENDED = List.of(
            Check.confirm("Left alone: somebody is within call all the time and knows how to open the disconnect."),
            Check.confirm("Left alone: a smoke alarm hangs in this room, and what puts a fire out stands at the door."),
            Check.confirm("Left alone: nothing that burns lies within a metre; the unit stands on what does not burn."),
            Check.confirm(
                    "Left alone: the unit has a thermal cut-out of its own, or its heat sink is read with a limit."),
            Check.confirm("Left alone: the supply's own current limit and protection are set for this unit."));

    /** What must be so at a supply that has only knobs, besides (common practice, no source). */
    public static final List<Check> BY_HAND = List.of(
            Check.confirm("Supply with knobs: its output is off now, and you know by heart how it is switched off."),
            Check.confirm("Supply with knobs: nobody but you works it, and you do not leave it while power is on."));

    /** The same with what must be so at a supply that has only knobs. */
    public Checklist byHand() {
        List<Check> all = new ArrayList<>(checks);
        all.addAll(ALWAYS.size(), BY_HAND);
        return new Checklist(all);
    }

    /** The same with what must be so before the unit is left. */
    public Checklist leftAlone() {
        List<Check> all = new ArrayList<>(checks);
        all.addAll(ALWAYS.size(), UNATTENDED);
        return new Checklist(all);
    }

    /**
     * Answer to one check.
     *
     * @param confirmed for a check without a value
     * @param ohms for a cold resistance; empty when it was not taken
     */
    public record Answer(Check check, boolean confirmed, OptionalDouble ohms) {}

    public Checklist {
        checks = List.copyOf(checks);
    }

    /**
     * The list of a run.
     *
     * @param switchBanks how many switch banks the unit has, zero or more
     * @param rails names of the rails
     */
    public static Checklist of(
            double leastInputOhms, int switchBanks, double leastSwitchOhms, List<String> rails, double leastRailOhms) {
        List<Check> all = new ArrayList<>(ALWAYS);
        all.add(Check.resistance("input plus to input minus", leastInputOhms));
        for (int bank = 1; bank <= switchBanks; bank++) {
            all.add(Check.resistance("drain to source of switch bank " + bank, leastSwitchOhms));
        }
        rails.forEach(rail -> all.add(Check.resistance("rail " + rail + " to 0 V", leastRailOhms)));
        return new Checklist(all);
    }

    /**
     * The answers of a person who, by giving their name, confirms every check and took no resistances; measured ones
     * are added to them.
     */
    public List<Answer> allConfirmed() {
        return checks.stream()
                .filter(Check::isRequired)
                .map(check -> new Answer(check, true, OptionalDouble.empty()))
                .toList();
    }

    /** What speaks against power; empty when nothing does. A resistance that was not taken does not. */
    public List<String> against(List<Answer> answers) {
        List<String> against = new ArrayList<>();
        for (Check check : checks) {
            boolean confirmed =
                    answers.stream().anyMatch(answer -> answer.check().equals(check) && answer.confirmed());
            if (check.isRequired() && !confirmed) {
                against.add("not confirmed: " + check.text());
            }
        }
        answers.stream()
                .filter(answer -> answer.ohms().isPresent())
                .map(answer -> answer.check().against(answer.ohms().getAsDouble()))
                .filter(words -> !words.isEmpty())
                .forEach(against::add);
        return against;
    }
}
