package railwitness.logger.command;

import picocli.CommandLine.Option;
import railwitness.drivers.rehearsal.Fault;
import railwitness.drivers.rehearsal.Specimen;
import railwitness.logger.rehearsal.FixtureMaker;
import railwitness.logger.sheet.Sheets;

/** What is wrong with the virtual unit, and which of all virtual benches it is. */
final class FaultOptions {
    @Option(
            names = "--fault",
            paramLabel = "CODE[=VALUE]",
            description = {
                "what is wrong with the unit: shorted-turn, wrong-turns, weak-half, dead-drive, dead-rectifier,",
                "shorted-rectifier, shorted-switch, leaky-switch, tired-capacitor, lead-resistance, weak-core"
            })
    private String fault;

    @Option(names = "--seed", paramLabel = "N", description = "draws the instruments' errors; same seed, same session")
    private long seed = 1;

    long seed() {
        return seed;
    }

    /** The unit of the design sheet with the fault in it. */
    Specimen specimen(Sheets sheets) {
        Specimen sound = FixtureMaker.specimen(sheets);
        return fault == null ? sound : Fault.of(fault).in(sound);
    }
}
