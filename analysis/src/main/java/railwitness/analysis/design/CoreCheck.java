package railwitness.analysis.design;

/** Whether the core carries the flux of the highest input. */
final class CoreCheck {
    private static final String TABLE = "[transformer]";

    private static final double NEAR = 0.9;

    /** Power ferrites saturate between 0.3 and 0.5 T hot and cold (common practice, no source). */
    private static final double FERRITE_TESLA = 0.4;

    /** No core material carries more (saturation of iron and cobalt alloys, from memory). */
    private static final double ANY_TESLA = 2.4;

    private static final double LONGEST_DUTY = 0.5;

    private final Design design;
    private final double highestVolts;
    private final Remarks remarks;

    CoreCheck(Design design, double highestVolts, Remarks remarks) {
        this.design = design;
        this.highestVolts = highestVolts;
        this.remarks = remarks;
    }

    void take() {
        if (design.transformer().isEmpty() || design.converter().frequencyHz().isEmpty()) {
            return;
        }
        Transformer transformer = design.transformer().get();
        if (transformer.coreAreaSquareMillimetres().isEmpty()) {
            return;
        }
        double tesla = FluxDensity.peakTesla(
                highestVolts,
                design.converter().duty().orElse(LONGEST_DUTY),
                design.converter().frequencyHz().getAsDouble(),
                transformer.primaryTurns(),
                transformer.coreAreaSquareMillimetres().getAsDouble() * 1e-6);
        if (transformer.highestFluxTesla().isPresent()) {
            against(tesla, transformer.highestFluxTesla().getAsDouble());
        } else {
            ofAnyCore(tesla);
        }
    }

    private void against(double tesla, double highest) {
        if (tesla > highest) {
            remarks.add(
                    design.converter().duty().isPresent() ? Remark.Weight.CANNOT_BE : Remark.Weight.LOOK,
                    TABLE,
                    Remarks.ONLY,
                    "highest_flux_T",
                    "the core reaches %s T at %s V of input%s and may reach %s T; put turns, core area, frequency or the"
                            + " highest input right",
                    tesla,
                    highestVolts,
                    duty(),
                    highest);
        } else if (tesla > NEAR * highest) {
            remarks.look(
                    TABLE,
                    Remarks.ONLY,
                    "highest_flux_T",
                    "the core reaches %s T at %s V of input%s, near the %s T that it may reach",
                    tesla,
                    highestVolts,
                    duty(),
                    highest);
        }
    }

    private void ofAnyCore(double tesla) {
        if (tesla > ANY_TESLA) {
            remarks.cannotBe(
                    TABLE,
                    Remarks.ONLY,
                    "core_area_mm2",
                    "the core would reach %s T at %s V of input, more than any material carries; put turns, core area or"
                            + " frequency right",
                    tesla,
                    highestVolts);
        } else if (tesla > FERRITE_TESLA) {
            remarks.look(
                    TABLE,
                    Remarks.ONLY,
                    "core_area_mm2",
                    "the core reaches %s T at %s V of input%s, and ferrites saturate from about 0.3 T on; state"
                            + " highest_flux_T",
                    tesla,
                    highestVolts,
                    duty());
        }
    }

    private String duty() {
        return design.converter().duty().isPresent() ? "" : " if each switch is on for half the cycle";
    }
}
