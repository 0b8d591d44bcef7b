package railwitness.analysis.cause;

import java.util.Optional;
import java.util.Set;

/** What would tell two causes apart that the readings leave side by side. */
enum TellingApart {
    CORE_OR_TURN(
            CauseCode.SHORTED_TURN,
            CauseCode.WEAK_CORE,
            "with power off measure the inductance of a primary half: a shorted turn leaves next to nothing of it, a cracked"
                    + " or wrong core a part"),
    TURN_OR_CLAMP(
            CauseCode.SHORTED_TURN,
            CauseCode.LEAKY_CLAMP,
            "after a minute without load and with the power off feel what is warm: transformer, or snubber and clamp"),
    CORE_OR_CLAMP(
            CauseCode.WEAK_CORE,
            CauseCode.LEAKY_CLAMP,
            "after a minute without load and with the power off feel what is warm: core, or snubber and clamp"),
    LEAD_OR_SWITCH(
            CauseCode.LEAD_RESISTANCE,
            CauseCode.DEAD_PARALLEL_SWITCH,
            "at full load compare the drop along leads and joints with that across each switch, and the switches with each"
                    + " other"),
    LEAD_OR_HOT_JOINT(
            CauseCode.LEAD_RESISTANCE,
            CauseCode.HOT_JOINT,
            "repeat full load cold and warm: a joint that opens when hot is worse the second time"),
    LEAD_OR_SLOW(
            CauseCode.LEAD_RESISTANCE,
            CauseCode.SLOW_DRIVE,
            "look at the rails' fall under load at a held input: resistance lowers them, slow switches only warm the heat"
                    + " sink"),
    HALF_OR_TURNS(
            CauseCode.WEAK_HALF,
            CauseCode.WRONG_TURNS,
            "with power off measure the resistance and, driven by a generator, the voltage of each secondary half: open"
                    + " shows no voltage, a turn short shows that much less"),
    HALF_OR_DRIVE(
            CauseCode.WEAK_HALF,
            CauseCode.DEAD_DRIVE,
            "look at both drains with a scope: without drive one stands still, with an open half both work"),
    DIODE_OR_HALF(
            CauseCode.DEAD_RECTIFIER,
            CauseCode.WEAK_HALF,
            "with power off test the diodes of both rails: a dead diode is of one rail, a weak half of both"),
    STOP_OR_SHORT(
            CauseCode.HICCUP,
            CauseCode.SHORT_UNDER_LOAD,
            "load one rail after the other, a little more each time, and look at both rails with a scope: a unit that stops"
                    + " lets both fall and tries again, a short pulls down its own first"),
    DRIVE_OR_DIODE(
            CauseCode.SLOW_DRIVE,
            CauseCode.SLOW_RECTIFIER,
            "at full load compare the temperatures of switches and diodes");

    private final Set<CauseCode> pair;
    private final String probe;

    TellingApart(CauseCode one, CauseCode other, String probe) {
        this.pair = Set.of(one, other);
        this.probe = probe;
    }

    static Optional<String> of(CauseCode one, CauseCode other) {
        for (TellingApart known : values()) {
            if (known.pair.contains(one) && known.pair.contains(other) && one != other) {
                return Optional.of(known.probe);
            }
        }
        return Optional.empty();
    }
}
