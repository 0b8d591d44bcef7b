package railwitness.analysis.design;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The sheet's parts as numbers for the closed form: resistances in ohm, the rest SI. What the sheet does not know counts
 * as zero and is named in {@code leftOut}.
 *
 * @param ratios turns of the half that feeds each rail over those of the primary half
 */
record Path(
        List<Double> ratios,
        double frequencyHz,
        double duty,
        double switchOhms,
        double primaryOhms,
        double inputCapacitorOhms,
        double secondaryOhms,
        double diodeOhms,
        double diodeVolts,
        double chokeOhms,
        double chokeHenries,
        double leakagePerSquaredRatio,
        double capacitorOhms,
        double capacitorFarads,
        double bleederSiemens,
        double controlAmperes,
        double coreWatts,
        double gateWatts,
        List<String> leftOut) {

    /** Duty taken where the sheet has none: the whole half cycle. */
    private static final double FULL_DUTY = 0.5;

    static Path of(Design design, Transformer transformer, Deviation deviation) {
        Collector take = new Collector();
        Converter converter = design.converter();
        double more = (double) deviation.secondaryTurns() / transformer.primaryTurns();
        return new Path(
                design.rails().stream()
                        .map(rail -> design.ratio(rail).orElseThrow() + more)
                        .toList(),
                take.orNought("frequency_Hz", converter.frequencyHz()),
                take.orElse("duty", converter.duty(), FULL_DUTY),
                take.orNought("on_resistance_ohm", design.switches().map(Switches::onResistanceOhms))
                        + deviation.extraPrimaryOhms(),
                take.orNought("primary_resistance_ohm", transformer.primaryResistanceOhms()),
                design.input().capacitorEsrOhms().orElse(0),
                take.orNought("secondary_resistance_ohm", transformer.secondaryResistanceOhms()),
                take.orNought("slope_ohm", design.rectifier().map(Rectifier::slopeOhms)),
                take.orNought("drop_V", design.rectifier().map(Rectifier::dropVolts)),
                design.filter()
                        .map(Filter::chokeResistanceOhms)
                        .orElse(OptionalDouble.empty())
                        .orElse(0),
                design.filter()
                                .map(Filter::chokeMicrohenries)
                                .orElse(OptionalDouble.empty())
                                .orElse(0)
                        * 1e-6,
                take.orNought("leakage_nH", transformer.leakageNanohenries())
                        * 1e-9
                        / (transformer.ratio() * transformer.ratio()),
                take.orNought("capacitor_esr_ohm", design.filter().map(Filter::capacitorEsrOhms)),
                take.orNought("capacitor_uF", design.filter().map(Filter::capacitorMicrofarads)) * 1e-6,
                inverse(design.filter().map(Filter::bleederOhms).orElse(OptionalDouble.empty())),
                take.orNought("control_A", converter.controlAmperes()),
                take.orNought("core_loss_W", transformer.coreLossWatts()),
                take.orNought("gate_and_switching_W", design.switches().map(Switches::gateAndSwitchingWatts)),
                take.missing());
    }

    /** On time of one switch, s; the whole half cycle at 1 s where the frequency is not known. */
    double onSeconds() {
        return duty * periodSeconds();
    }

    double periodSeconds() {
        return frequencyHz > 0 ? 1 / frequencyHz : 1;
    }

    double ratio(int rail) {
        return ratios.get(rail);
    }

    /** What all rails share, seen from one of them: primary side times its ratio squared, ohm. */
    double sharedOhms(int rail) {
        return ratio(rail) * ratio(rail) * (switchOhms + primaryOhms + inputCapacitorOhms);
    }

    /** A rail's own resistance while it conducts, ohm. */
    double ownOhms() {
        return secondaryOhms + diodeOhms + chokeOhms + capacitorOhms;
    }

    /**
     * Inductance that so many rails of all see when they conduct together, H; none where the frequency is not known. The
     * leakage lies between primary and secondary, so the rails share it as they share the primary's resistance; the sheet
     * gives what one rail sees when all conduct.
     */
    double pulseHenries(int rail, int together, int all) {
        double leakage = leakagePerSquaredRatio * ratio(rail) * ratio(rail); // it goes with the square of the turns
        return frequencyHz > 0 ? chokeHenries + leakage * together / all : 0;
    }

    private static double inverse(OptionalDouble ohms) {
        return ohms.isPresent() ? 1 / ohms.getAsDouble() : 0;
    }

    /** Takes zero for what is missing and remembers its key. */
    private static final class Collector {
        private final List<String> missing = new ArrayList<>();

        double orElse(String key, OptionalDouble value, double other) {
            if (value.isEmpty()) {
                missing.add(key);
            }
            return value.orElse(other);
        }

        double orNought(String key, OptionalDouble value) {
            return orElse(key, value, 0);
        }

        double orNought(String key, java.util.Optional<OptionalDouble> value) {
            return orNought(key, value.orElse(OptionalDouble.empty()));
        }

        List<String> missing() {
            return List.copyOf(missing);
        }
    }
}
