package railwitness.logger.ui.command;

import java.util.List;
import picocli.CommandLine.Option;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.winding.Coil;
import railwitness.drivers.winding.WoundFault;

/** What is wrong with the virtual unit, and which of all virtual benches it is. */
final class FaultOptions {
    @Option(
            names = "--fault",
            paramLabel = "CODE[@PLACE][=VALUE]",
            description =
                    "What is wrong with the unit, where and how much. CODE is shorted-turn, wrong-turns, weak-half,"
                            + " dead-drive, dead-rectifier, shorted-rectifier, shorted-switch, leaky-switch,"
                            + " tired-capacitor, lead-resistance, weak-core, dead-parallel-switch, slow-drive,"
                            + " slow-rectifier, leaky-clamp, hot-joint, thermal-runaway, hiccup, reversed-half or"
                            + " short-under-load; hiccup has the places under-voltage and over-current."
                            + " With a transformer stage in the plan also mismatched-halves, gap, thin-wire or poor-joint, of"
                            + " the transformer that lies on the bench; PLACE is then primary or secondary.")
    private String fault;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Draws the errors of the instruments. The same N gives the same session.")
    private long seed = 1;

    long seed() {
        return seed;
    }

    List<Fault> faults() {
        return fault == null ? List.of() : List.of(Fault.of(fault));
    }

    /** What is wrong with the unit beside the transformer that lies on the bench. */
    List<Fault> ofUnit() {
        return fault == null || WoundFault.knows(fault) ? List.of() : faults();
    }

    /** The transformer that lies on the bench, with what is wrong with it. */
    Coil in(Coil sound) {
        return fault != null && WoundFault.knows(fault) ? WoundFault.applied(fault, sound) : sound;
    }
}
