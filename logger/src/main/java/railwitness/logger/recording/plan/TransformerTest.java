package railwitness.logger.recording.plan;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.drivers.winding.Half;
import railwitness.drivers.winding.Hookup;

/**
 * A transformer that lies alone on the bench: every connection is asked of the person and read with what the bench has. The
 * unit takes no part; stages after this one have the transformer in it.
 *
 * @param parts what is measured
 * @param testAmps current for resistances, A
 * @param generator whether primary A is driven by a generator
 * @param driveHz its frequency, Hz; that of the design sheet where empty
 * @param senseOhms resistor through which primary A is driven, ohm
 * @param ringMicrofarads capacitor of the ringing, uF
 * @param tolerancePct limit of the error of resistor and capacitor, percent
 * @param timing settling and averaging of each connection
 */
public record TransformerTest(
        Set<Part> parts,
        double testAmps,
        boolean generator,
        OptionalDouble driveHz,
        OptionalDouble senseOhms,
        OptionalDouble ringMicrofarads,
        double tolerancePct,
        Timing timing)
        implements Stage {
    /** What a stage of its kind is called in plans and sessions. */
    public static final String WORD = "transformer";

    private static final int COOLING = 8;

    /** What can be measured. */
    public enum Part {
        RESISTANCES("resistances"),
        RATIOS("ratios"),
        POLARITY("polarity"),
        TURNS("turns"),
        INDUCTANCE("inductance"),
        LEAKAGE("leakage"),
        COOLING("cooling");

        private final String word;

        Part(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public TransformerTest {
        parts = Set.copyOf(parts);
    }

    @Override
    public String word() {
        return WORD;
    }

    /** None: what is done here is no state of the unit. */
    @Override
    public List<Step> steps(Rating rating) {
        return List.of();
    }

    /** Whether the winding cools after a run: then the transformer is in the unit. */
    public boolean cooling() {
        return parts.contains(Part.COOLING);
    }

    /** At most this long, the hands of the person aside. */
    public Duration atMost() {
        return timing.settleAtMost()
                .plus(timing.average())
                .multipliedBy(hookups().size());
    }

    /** The connections, in the order that moves the fewest leads. */
    public List<Hookup> hookups() {
        List<Hookup> all = new ArrayList<>();
        if (parts.contains(Part.RESISTANCES)) {
            for (Half half : Half.values()) {
                all.add(Hookup.of(Hookup.Kind.ONE_WAY, half));
                all.add(Hookup.of(Hookup.Kind.OTHER_WAY, half));
            }
        }
        if (generator) {
            driven(all);
        }
        if (ringMicrofarads.isPresent() && parts.contains(Part.INDUCTANCE)) {
            all.add(Hookup.of(Hookup.Kind.RINGING));
        }
        for (int i = 1; cooling() && i <= COOLING; i++) {
            all.add(Hookup.cooling(Half.SECONDARY_A, i));
        }
        return all;
    }

    private void driven(List<Hookup> all) {
        boolean ratios = parts.contains(Part.RATIOS);
        boolean current = senseOhms.isPresent() && parts.contains(Part.INDUCTANCE);
        boolean polarity = parts.contains(Part.POLARITY);
        if (ratios || current || polarity || parts.contains(Part.TURNS)) {
            all.add(Hookup.of(Hookup.Kind.VOLTS, Half.PRIMARY_A));
        }
        if (current) {
            all.add(Hookup.of(Hookup.Kind.RESISTOR));
            all.add(Hookup.of(Hookup.Kind.BOTH));
        }
        if (ratios || polarity) {
            all.add(Hookup.of(Hookup.Kind.VOLTS, Half.PRIMARY_B));
        }
        if (polarity) {
            all.add(Hookup.of(Hookup.Kind.PRIMARIES));
        }
        if (ratios || polarity) {
            all.add(Hookup.of(Hookup.Kind.VOLTS, Half.SECONDARY_A));
            all.add(Hookup.of(Hookup.Kind.VOLTS, Half.SECONDARY_B));
        }
        if (polarity) {
            all.add(Hookup.of(Hookup.Kind.SECONDARIES));
        }
        if (parts.contains(Part.TURNS)) {
            all.add(Hookup.of(Hookup.Kind.ONE_TURN));
        }
        if (senseOhms.isPresent() && parts.contains(Part.LEAKAGE)) {
            all.add(Hookup.of(Hookup.Kind.SHORTED_WINDING));
            all.add(Hookup.of(Hookup.Kind.SHORTED_RESISTOR));
        }
    }

    /** What this stage leaves out, and what it would need. */
    public List<String> needs() {
        List<String> needs = new ArrayList<>();
        if (!generator) {
            needs.add("ratios, polarity and turns need a generator at the working frequency (drive = \"generator\");"
                    + " without one the ratio comes from the unit itself, by a line-sweep stage with load_pct = 0");
        }
        if (senseOhms.isEmpty() && ringMicrofarads.isEmpty()) {
            needs.add("inductance needs the generator's current through a resistor (sense_ohm), or a capacitor and a"
                    + " scope (ring_capacitor_uF)");
        }
        if (!generator || senseOhms.isEmpty()) {
            needs.add("leakage needs the generator and a resistor (sense_ohm)");
        }
        return needs;
    }
}
