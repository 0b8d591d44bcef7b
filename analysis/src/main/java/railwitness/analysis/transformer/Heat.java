package railwitness.analysis.transformer;

/**
 * Losses and the temperature they lead to, found together: warm copper loses more.
 *
 * @param primaryWatts both halves, W
 * @param secondaryWatts both halves, W
 * @param coreWatts W
 * @param degC of the winding, as estimated
 */
record Heat(double primaryWatts, double secondaryWatts, double coreWatts, double degC) {
    private static final double HOTTEST = 250;

    static Heat of(ToroidDesign design) {
        Windings windings = new Windings(design);
        Currents currents = new Currents(design);
        double area = design.core().coolingSquareMetres();
        Heat heat = new Heat(0, 0, 0, design.ambientDegC());
        for (int round = 0; round < 40; round++) {
            double degC = (heat.degC + Math.min(HOTTEST, design.ambientDegC() + rise(heat.watts(), area))) / 2;
            heat = new Heat(
                    copper(windings, design.primary(), currents.primaryRms(), degC),
                    copper(windings, design.secondary(), currents.secondaryRms(), degC),
                    core(design, degC),
                    degC);
        }
        return heat;
    }

    private static double copper(Windings windings, Winding winding, double rms, double degC) {
        return 2 * rms * rms * windings.ohms(winding, degC) * windings.alternatingFactor(winding, degC);
    }

    /** The loss formula ends where the core saturates; beyond, what limits is the flux density. */
    private static double core(ToroidDesign design, double degC) {
        Drive drive = design.drive();
        double tesla = Math.min(
                Flux.peak(design, drive.nominalVolts()),
                design.core().material().saturationTesla(25));
        return design.core().volume()
                * design.core()
                        .material()
                        .wattsPerCubicMetreSquare(drive.frequencyHz(), tesla, drive.duty(), Math.min(degC, 140));
    }

    double watts() {
        return primaryWatts + secondaryWatts + coreWatts;
    }

    /**
     * Rise of a wound core in still air, K: {@code (mW / cm^2) ^ 0.833}, a rule of handbooks for ferrite cores (from
     * memory); good to some 30 %.
     */
    static double rise(double watts, double squareMetres) {
        return watts <= 0 ? 0 : Math.pow(watts * 1e3 / (squareMetres * 1e4), 0.833);
    }
}
