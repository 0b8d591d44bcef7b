package railwitness.logger.recording.rehearsal;

import java.util.List;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.winding.Coil;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.sheet.Sheets;

/** The virtual bench of a rehearsal: the unit of the design sheet behind the instruments of the bench sheet. */
public final class FixtureMaker {
    private FixtureMaker() {}

    /**
     * A bench of which each instrument is as good as its sheet says and no better.
     *
     * @param faults what is wrong with the unit
     * @param seed draws the instruments' errors; the same seed, the same bench
     * @param clock nanoseconds of the session's axis
     */
    public static VirtualBench bench(Sheets sheets, List<Fault> faults, long seed, LongSupplier clock) {
        return sheets.plan().content().transformer().isPresent()
                ? bench(sheets, specimen(sheets), faults, CoilMaker.of(sheets.wound()), seed, clock)
                : VirtualBench.of(specimen(sheets), faults, sheets.bench().content(), seed, clock);
    }

    /**
     * The bench with a transformer that lies on it, of the plan's transformer stage.
     *
     * @param unit into which it is fitted later
     */
    public static VirtualBench bench(
            Sheets sheets, Specimen unit, List<Fault> faults, Coil coil, long seed, LongSupplier clock) {
        TransformerTest test = sheets.plan().content().transformer().orElseThrow();
        VirtualBench bench = VirtualBench.of(
                CoilMaker.fitted(unit, coil), faults, sheets.bench().content(), seed, clock);
        bench.coil(coil, CoilMaker.drive(sheets.wound(), test), CoilMaker.ringFarads(test));
        return bench;
    }

    /** The bench around a unit that is already as it should be. */
    public static VirtualBench bench(Sheets sheets, Specimen specimen, long seed, LongSupplier clock) {
        return VirtualBench.of(specimen, List.of(), sheets.bench().content(), seed, clock);
    }

    /** The sound unit of the design sheet behind the leads of the bench sheet. */
    public static Specimen specimen(Sheets sheets) {
        return SpecimenMaker.of(
                sheets.design().content(), sheets.bench().content().leadResistanceOhms());
    }
}
