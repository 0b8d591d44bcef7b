package railwitness.analysis.cause;

import java.util.List;
import java.util.Optional;

/**
 * The faults a cause may name, each with what to check, cheapest and safest first: looking, then measuring with the power
 * off, then measuring with it on.
 */
public enum CauseCode {
    SHORTED_TURN(
            "shorted-turn",
            "a turn of the transformer is shorted",
            "with power off compare the inductance of both primary halves with the sheet, and feel after a minute without"
                    + " load whether the transformer is warm",
            "lift the secondary off the rectifier: if the no-load current stays, the transformer takes it"),
    WRONG_TURNS(
            "wrong-turns",
            "the windings have other turns than the sheet says",
            "count what can be seen; then, with power off, drive one half at low voltage from a generator and measure each"
                    + " half's ratio"),
    WEAK_HALF(
            "weak-half",
            "one half contributes little: half of a secondary, or one drive side",
            "with power off measure the resistance and, driven by a generator, the voltage of each secondary half: open"
                    + " shows no voltage, a turn short shows that much less",
            "with power on look at both drains"),
    DEAD_DRIVE(
            "dead-drive",
            "one drive side gives nothing",
            "with power off test the gate resistors and gate to source of both sides",
            "with power on look at both gates and both drains: one side stands still"),
    DEAD_RECTIFIER(
            "dead-rectifier",
            "a rectifier of this rail does not conduct",
            "with power off test both diodes of this rail and their joints"),
    SHORTED_RECTIFIER(
            "shorted-rectifier",
            "a rectifier or its rail is shorted, or takes current beside the load",
            "with power off and rails discharged measure the diodes and the rail both ways",
            "without load feel or film with a thermal camera what gets warm on this rail"),
    SHORTED_SWITCH("shorted-switch", "a switch is shorted", "with power off measure drain to source of both switches"),
    LEAKY_SWITCH(
            "leaky-switch",
            "a switch, or the input, leaks while the unit is off",
            "with the remote turn-on off take out one switch after the other and watch the input current"),
    TIRED_CAPACITOR(
            "tired-capacitor",
            "the filter capacitor of this rail is tired",
            "look for a bulged top or dried electrolyte",
            "with power off and discharged measure its equivalent series resistance",
            "hold a good capacitor across it and read the ripple again"),
    LEAD_RESISTANCE(
            "lead-resistance",
            "too much resistance in leads, joints or switches",
            "look at fuse holder, terminals and solder joints, and pull at them with the power off",
            "at full load measure the drop along leads, fuse, joints and across each switch"),
    WEAK_CORE(
            "weak-core",
            "the core takes more than it should: cracked, gapped or of another grade",
            "look for a crack in the core and measure the inductance of a primary half with the power off",
            "look at the no-load current's waveform"),
    DEAD_PARALLEL_SWITCH(
            "dead-parallel-switch",
            "one of several parallel switches does not conduct",
            "with power off compare gate resistors and gate to source of all switches in parallel",
            "at full load compare their temperatures: the dead one stays cold"),
    SLOW_DRIVE(
            "slow-drive",
            "the switches change over slowly: weak drive or wrong gate resistors",
            "with power off measure the gate resistors and the driver's supply",
            "with power on look at the gates' edges; all switches get warm alike"),
    SLOW_RECTIFIER(
            "slow-rectifier",
            "the rectifier diodes recover slowly: wrong type",
            "read the diodes' type against the sheet",
            "at full load compare the diodes' temperature with the switches'"),
    LEAKY_CLAMP(
            "leaky-clamp",
            "a snubber or clamp takes current all the time",
            "with power off measure snubber resistors and clamp diodes",
            "without load look for what gets hot beside the switches"),
    HOT_JOINT(
            "hot-joint",
            "a joint opens as it gets hot",
            "look at joints near switches, transformer and rectifier with the power off, and solder them anew",
            "warm one part after the other gently with air and watch the rail"),
    THERMAL_RUNAWAY(
            "thermal-runaway",
            "losses grow with temperature without end",
            "with power off look at the heat sink's paste, screws and insulators",
            "repeat at half load and compare how fast the heat sink warms"),
    HICCUP(
            "hiccup",
            "the unit stops and starts again: over-current or under-voltage lock-out",
            "look at the input voltage at the unit's own terminals under load",
            "look at the rail over some seconds with a scope"),
    REVERSED_HALF(
            "reversed-half",
            "a winding half is connected the wrong way round",
            "with power off drive one half from a generator and compare the phase of all others"),
    SHORT_UNDER_LOAD(
            "short-under-load",
            "something shorts only under load or when warm",
            "with power off measure every rail at its working voltage from a current-limited supply"),
    MISMATCHED_HALVES(
            "mismatched-halves",
            "the halves of a winding have different turns",
            "count the turns of both halves with one turn of wire through the hole"),
    GAP(
            "gap",
            "the core has a crack or a gap",
            "look for a crack; a ring that rings dull when tapped is cracked",
            "measure the bare core with ten turns"),
    THIN_WIRE(
            "thin-wire",
            "the wire is thinner or has fewer strands than the sheet's",
            "count the strands at both ends of each half"),
    POOR_JOINT(
            "poor-joint",
            "a joint is poor, or strands of one half are not soldered",
            "solder the ends of that half again and measure it once more");

    private final String word;
    private final String text;
    private final List<String> checks;

    CauseCode(String word, String text, String... checks) {
        this.word = word;
        this.text = text;
        this.checks = List.of(checks);
    }

    /** The code as written in findings. */
    public String word() {
        return word;
    }

    /** What it says in a technician's words. */
    public String text() {
        return text;
    }

    /** What to measure first. */
    public String checkNext() {
        return checks.get(0);
    }

    /** What to do next, cheapest and safest first. */
    public List<String> checks() {
        return checks;
    }

    /**
     * Those that readings of means and ripple cannot tell from this one at a place, whatever the numbers.
     *
     * @param place as in the cause; empty where it is not told
     */
    public List<CauseCode> alike(Optional<String> place) {
        if (this == WRONG_TURNS && place.isPresent()) {
            return List.of(WEAK_HALF, DEAD_DRIVE);
        }
        return alike();
    }

    private List<CauseCode> alike() {
        return switch (this) {
            case SHORTED_TURN -> List.of(WEAK_CORE, LEAKY_CLAMP);
            case WEAK_CORE -> List.of(SHORTED_TURN, LEAKY_CLAMP);
            case WEAK_HALF -> List.of(WRONG_TURNS, DEAD_DRIVE, REVERSED_HALF);
            case DEAD_DRIVE -> List.of(WEAK_HALF);
            case LEAD_RESISTANCE -> List.of(DEAD_PARALLEL_SWITCH, HOT_JOINT);
            case DEAD_PARALLEL_SWITCH -> List.of(LEAD_RESISTANCE);
            case SLOW_DRIVE -> List.of(SLOW_RECTIFIER);
            case HOT_JOINT -> List.of(LEAD_RESISTANCE);
            default -> List.of();
        };
    }
}
