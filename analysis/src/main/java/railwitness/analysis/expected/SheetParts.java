package railwitness.analysis.expected;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.converter.Part;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Filter;
import railwitness.analysis.design.FilterInput;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.Rectifier;
import railwitness.analysis.design.Switches;
import railwitness.analysis.design.Transformer;

/**
 * The sheet's parts as numbers for the forward model, each with how far it may be off. What the sheet leaves out gets the
 * value that is usual for the unit's power, and a wide tolerance.
 *
 * @param parts the numbers
 * @param tolerances of the parts that matter, those left out included
 */
public record SheetParts(Parts parts, List<Tolerance> tolerances) {
    private static final double EFFICIENCY = 0.88;
    private static final double DRAIN_FARADS = 10e-9;
    private static final double SNUBBER_SHARE = 0.55;
    private static final double SECONDARY_FARADS = 1e-9;
    private static final double SECONDARY_SHARE = 0.8;
    private static final double LOG_VOLTS = 0.032;
    private static final double USUAL_DUTY = 0.44;
    private static final double FULL_DUTY = 0.46;

    /** Of a duty that the nominal rail tells: how loosely rails are named (4 %), and what falls on the way (2 %). */
    private static final double DUTY_OF_NOMINAL_U = 0.045;

    private static final double HEADROOM = 1.25;
    private static final double HEADROOM_U = 0.15;
    private static final double IDLE_LIFT = 0.008;
    private static final double WIRING_OHMS = 0.008;

    /**
     * Frequency times turns of a primary half over its voltage, Hz turns per V: what a core's flux allows. From
     * V D / (2 N f A) with D = 0.45 on the ring cores of 1 to 1.5 cm2 that carry 100 to 400 W, at 0.15 to 0.25 T of ferrite. Common
     * practice, no source.
     */
    private static final double FLUX_HERTZ_TURNS_PER_VOLT = 12e3;

    /** Standard uncertainty of its logarithm: area and flux density each by a quarter. */
    private static final double FLUX_FREQUENCY_U = 0.35;

    private static final double USUAL_HERTZ = 40e3;

    /** Taken by gates and by switching itself in each cycle, J (common practice, no source). */
    private static final double GATE_JOULES = 25e-6;

    /** Series resistance times capacitance of electrolytic capacitors, s (common practice, no source). */
    private static final double ELECTROLYTIC_SECONDS = 65e-6;

    private static final double ELECTROLYTIC_U = 0.4;

    /** Filter capacitor for each ampere of load where it takes the rectifier's pulses, F/A (common practice, no source). */
    private static final double AT_THE_RECTIFIER = 1000e-6;

    /** The same behind a choke, whose swing is all that it takes. */
    private static final double BEHIND_A_CHOKE = 500e-6;

    public SheetParts {
        tolerances = List.copyOf(tolerances);
    }

    public static SheetParts of(Design design) {
        return new Reader(design).read();
    }

    /** Tolerances of parts that the sheet leaves out. */
    public List<Tolerance> missing() {
        return tolerances.stream().filter(Tolerance::missing).toList();
    }

    /** Whether the sheet leaves out that part. */
    public boolean leavesOut(Part part) {
        return tolerances.stream().anyMatch(tolerance -> tolerance.missing() && tolerance.part() == part);
    }

    private static final class Reader {
        private final Design design;
        private final List<Tolerance> tolerances = new ArrayList<>();
        private Parts parts;

        Reader(Design design) {
            this.design = design;
            List<Rail> rails = design.rails();
            boolean[] negative = new boolean[rails.size()];
            for (int rail = 0; rail < negative.length; rail++) {
                negative[rail] = rails.get(rail).nominalVolts() < 0;
            }
            parts = Parts.blank(
                    design.converter().filter() == FilterInput.CHOKE,
                    rails.stream().map(Rail::name).toList(),
                    negative);
        }

        SheetParts read() {
            double input = design.input().nominalVolts();
            double rail = design.rails().stream()
                    .mapToDouble(one -> Math.abs(one.nominalVolts()))
                    .average()
                    .orElse(input);
            double load = load(rail);
            double power = design.rails().stream()
                    .mapToDouble(one -> Math.abs(one.nominalVolts()) * load)
                    .sum();
            double amperes = power / EFFICIENCY / input;
            boolean choke = parts.choke();
            parts = parts.with(Part.NOMINAL_INPUT, input)
                    .with(Part.DIODE_LOG_VOLTS, LOG_VOLTS)
                    .with(Part.IDLE_LIFT, IDLE_LIFT);
            Optional<Transformer> transformer = design.transformer();
            frequency(transformer, input);
            duty(transformer, input, rail);
            double hertz = parts.get(Part.FREQUENCY);
            double duty = parts.get(Part.DUTY);
            ratios(transformer, input, duty);
            Optional<Switches> switches = design.switches();
            take(Usual.SWITCH, of(switches, Switches::onResistanceOhms), 0.0085 * input / amperes);
            take(Usual.PRIMARY, of(transformer, Transformer::primaryResistanceOhms), 0.004 * input / amperes);
            take(Usual.INPUT_CAPACITOR, design.input().capacitorEsrOhms(), 0.012 * input / amperes);
            take(Usual.SECONDARY, of(transformer, Transformer::secondaryResistanceOhms), 0.0027 * rail / load);
            double ratio = parts.get(Part.RATIO);
            double leakage = of(transformer, Transformer::leakageNanohenries).orElse(-1) * 1e-9;
            take(
                    Usual.LEAKAGE,
                    leakage < 0 ? OptionalDouble.empty() : OptionalDouble.of(leakage / ratio / ratio),
                    0.012 * rail / load / hertz / 2 / ratio / ratio);
            double turns = transformer.map(Transformer::primaryTurns).orElse(4);
            take(
                    Usual.MAGNETISING,
                    scaled(of(transformer, Transformer::inductancePerTurnSquaredNanohenries), 1e-9 * turns * turns),
                    4000e-9 * turns * turns);
            Optional<Rectifier> rectifier = design.rectifier();
            take(Usual.DROP, of(rectifier, Rectifier::dropVolts), 0.7);
            take(Usual.SLOPE, of(rectifier, Rectifier::slopeOhms), 0.0019 * rail / load);
            Optional<Filter> filter = design.filter();
            if (choke) {
                take(
                        Usual.CHOKE,
                        scaled(of(filter, Filter::chokeMicrohenries), 1e-6),
                        rail * (1 - 2 * duty) / (2 * hertz * 0.25 * load));
                take(Usual.CHOKE_OHMS, of(filter, Filter::chokeResistanceOhms), 0.003 * rail / load);
            } else {
                parts = parts.with(
                        Part.CHOKE, of(filter, Filter::chokeMicrohenries).orElse(0) * 1e-6);
                OptionalDouble wire = of(filter, Filter::chokeResistanceOhms);
                if (wire.isPresent()) {
                    take(Usual.CHOKE_OHMS, wire, 0);
                } else {
                    parts = parts.with(Part.CHOKE_OHMS, WIRING_OHMS);
                    tolerances.add(Usual.WIRING.tolerance(true));
                }
            }
            double usualFarads = choke ? BEHIND_A_CHOKE : AT_THE_RECTIFIER;
            take(Usual.CAPACITOR, scaled(of(filter, Filter::capacitorMicrofarads), 1e-6), usualFarads * load);
            seriesResistance(filter, load);
            sisters();
            OptionalDouble bleeder = of(filter, Filter::bleederOhms);
            take(
                    Usual.BLEEDER,
                    bleeder.isPresent() ? OptionalDouble.of(1 / bleeder.getAsDouble()) : bleeder,
                    0.0025 * load / rail);
            take(Usual.CONTROL, design.converter().controlAmperes(), 0.13);
            take(Usual.GATE, of(switches, Switches::gateAndSwitchingWatts), GATE_JOULES * hertz);
            take(Usual.CORE, of(transformer, Transformer::coreLossWatts), 0.009 * power);
            double swing = 2 * input * ratio;
            double snubbers = SNUBBER_SHARE * 2 * DRAIN_FARADS * 4 * input * input * hertz;
            take(
                    Usual.SECONDARY_SNUBBERS,
                    OptionalDouble.empty(),
                    choke ? SECONDARY_SHARE * 2 * SECONDARY_FARADS * swing * swing * hertz : 0);
            take(Usual.SNUBBERS, OptionalDouble.empty(), snubbers);
            if (design.converter().regulated()) {
                for (int index = 0; index < design.rails().size(); index++) {
                    parts = parts.with(
                            Part.HELD_VOLTS,
                            index,
                            Math.abs(design.rails().get(index).nominalVolts()));
                }
            }
            if (design.converter().regulated()) {
                tolerances.add(Usual.HELD.tolerance(false));
            }
            return new SheetParts(parts, tolerances);
        }

        /** Where the sheet does not name it, the turns tell what their flux allows. */
        private void frequency(Optional<Transformer> transformer, double input) {
            OptionalDouble known = design.converter().frequencyHz();
            if (known.isPresent() || transformer.isEmpty()) {
                take(Usual.FREQUENCY, known, USUAL_HERTZ);
                return;
            }
            double hertz = FLUX_HERTZ_TURNS_PER_VOLT * input / transformer.get().primaryTurns();
            parts = parts.with(Part.FREQUENCY, hertz);
            tolerances.add(new Tolerance(
                    Part.FREQUENCY, -1, Usual.FREQUENCY.tolerance(true).name(), FLUX_FREQUENCY_U, true));
        }

        /** Where only the capacitance is named, the loss factor of electrolytic capacitors tells the resistance. */
        private void seriesResistance(Optional<Filter> filter, double load) {
            OptionalDouble known = of(filter, Filter::capacitorEsrOhms);
            OptionalDouble microfarads = of(filter, Filter::capacitorMicrofarads);
            if (known.isPresent() || microfarads.isEmpty()) {
                take(Usual.ESR, known, 0.08 / load);
                return;
            }
            parts = parts.with(Part.CAPACITOR_OHMS, ELECTROLYTIC_SECONDS / microfarads.getAsDouble() * 1e6);
            tolerances.add(new Tolerance(
                    Part.CAPACITOR_OHMS, -1, Usual.ESR.tolerance(true).name(), ELECTROLYTIC_U, true));
        }

        /** With a choke the nominal rail tells the duty, where turns are known and nothing holds the rail below its own. */
        private void duty(Optional<Transformer> transformer, double input, double rail) {
            OptionalDouble known = design.converter().duty();
            boolean told = parts.choke()
                    && transformer.isPresent()
                    && !design.converter().regulated();
            if (known.isPresent() || !told) {
                take(Usual.DUTY, known, parts.choke() ? USUAL_DUTY : FULL_DUTY);
                return;
            }
            double duty =
                    (rail * 1.02 + 0.8) / (0.98 * input * transformer.get().ratio()) / 2;
            parts = parts.with(Part.DUTY, Math.max(0.1, Math.min(0.48, duty)));
            tolerances.add(
                    new Tolerance(Part.DUTY, -1, Usual.DUTY.tolerance(true).name(), DUTY_OF_NOMINAL_U, true));
        }

        private double load(double rail) {
            return design.rails().stream()
                    .map(Rail::fullLoadAmperes)
                    .filter(OptionalDouble::isPresent)
                    .mapToDouble(OptionalDouble::getAsDouble)
                    .average()
                    .orElse(design.input().highestAmperes().orElse(15)
                            * design.input().nominalVolts()
                            * 0.8
                            / rail
                            / 2);
        }

        private void ratios(Optional<Transformer> transformer, double input, double duty) {
            for (int index = 0; index < design.rails().size(); index++) {
                double nominal = Math.abs(design.rails().get(index).nominalVolts());
                double share = parts.choke() ? 2 * duty : 1;
                double room = design.converter().regulated() ? HEADROOM : 1;
                double guessed = room * (nominal * 1.02 + 0.8) / (0.98 * input * share);
                parts = parts.with(
                        Part.RATIO, index, transformer.map(Transformer::ratio).orElse(guessed));
            }
            if (transformer.isEmpty()) {
                Tolerance usual = Usual.RATIO.tolerance(true);
                tolerances.add(
                        design.converter().regulated()
                                ? new Tolerance(Part.RATIO, -1, usual.name(), HEADROOM_U, true)
                                : usual);
            }
        }

        /** Rails' own parts, bought and wound together, differ less from each other than from the sheet. */
        private void sisters() {
            for (int rail = 0; rail < design.rails().size(); rail++) {
                String name = " of " + design.rails().get(rail).name();
                for (Usual usual : List.of(Usual.CAPACITOR, Usual.ESR, Usual.CHOKE)) {
                    if (usual != Usual.CHOKE || parts.choke()) {
                        tolerances.add(new Tolerance(usual.part, rail, usual.words + name, Usual.SISTERS, false));
                    }
                }
            }
        }

        private void take(Usual usual, OptionalDouble known, double guessed) {
            boolean missing = known.isEmpty();
            double value = known.orElse(guessed);
            parts = parts.with(usual.part, value);
            if (value != 0) {
                tolerances.add(usual.tolerance(missing));
            }
        }

        private static OptionalDouble scaled(OptionalDouble value, double factor) {
            return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
        }

        private static <T> OptionalDouble of(Optional<T> table, java.util.function.Function<T, OptionalDouble> number) {
            return table.map(number).orElse(OptionalDouble.empty());
        }
    }
}
