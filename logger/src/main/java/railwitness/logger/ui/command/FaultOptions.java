package railwitness.logger.ui.command;

import java.util.List;
import picocli.CommandLine.Option;
import railwitness.drivers.converter.Fault;

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
                            + " short-under-load.")
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
}
