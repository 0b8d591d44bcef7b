package railwitness.analysis.transformer;

import java.util.OptionalDouble;

/**
 * A core's material: loss after Steinmetz, {@code P = k f^alpha B^beta (ct2 - ct1 T + ct0 T^2)}, W/m^3 with Hz, T, degC.
 *
 * @param name as printed
 * @param k coefficient
 * @param alpha exponent of frequency
 * @param beta exponent of flux density
 * @param ct2 of the temperature's factor
 * @param ct1 of the temperature's factor
 * @param ct0 of the temperature's factor
 * @param saturationColdTesla flux density that it bears at 25 degC, T
 * @param saturationHotTesla at 100 degC, T
 * @param permeability initial, relative
 * @param source where the numbers come from
 */
public record CoreMaterial(
        String name,
        double k,
        double alpha,
        double beta,
        double ct2,
        double ct1,
        double ct0,
        double saturationColdTesla,
        double saturationHotTesla,
        double permeability,
        String source) {
    public CoreMaterial {
        if (!(k > 0 && alpha > 0 && beta > 0)) {
            throw new IllegalArgumentException("loss coefficients of '" + name + "' must be above 0");
        }
        if (!(saturationHotTesla > 0 && saturationColdTesla >= saturationHotTesla)) {
            throw new IllegalArgumentException(
                    "saturation of '" + name + "' must be above 0 and not larger hot than cold");
        }
    }

    /**
     * Loss per volume for a sine, W/m^3.
     *
     * @param frequencyHz Hz
     * @param peakTesla amplitude, T
     * @param degC of the core
     */
    public double wattsPerCubicMetre(double frequencyHz, double peakTesla, double degC) {
        double temperature = ct2 - ct1 * degC + ct0 * degC * degC;
        return k * Math.pow(frequencyHz, alpha) * Math.pow(peakTesla, beta) * temperature;
    }

    /**
     * Loss per volume under a square drive that rests between its pulses, W/m^3: the improved generalised Steinmetz
     * equation (K. Venkatachalam and others, IEEE COMPEL 2002) worked out for two ramps of the duty each.
     *
     * @param duty share of the cycle in which one switch is on, above 0 to 0.5
     */
    public double wattsPerCubicMetreSquare(double frequencyHz, double peakTesla, double duty, double degC) {
        double integral = 0;
        int steps = 720;
        for (int i = 0; i < steps; i++) {
            integral += Math.pow(Math.abs(Math.cos((i + 0.5) * 2 * Math.PI / steps)), alpha) * 2 * Math.PI / steps;
        }
        double ki = 1 / (Math.pow(2 * Math.PI, alpha - 1) * Math.pow(2, beta - alpha) * integral);
        double slope = 2 * peakTesla * frequencyHz / duty;
        double shape = ki * Math.pow(slope, alpha) * Math.pow(2 * peakTesla, beta - alpha) * 2 * duty;
        double sine = Math.pow(frequencyHz, alpha) * Math.pow(peakTesla, beta);
        return wattsPerCubicMetre(frequencyHz, peakTesla, degC) * shape / sine;
    }

    /** What it bears at a temperature, T: a straight line through the two points, level beyond 25 and 125 degC. */
    public double saturationTesla(double degC) {
        double bounded = Math.max(25, Math.min(125, degC));
        return saturationColdTesla + (saturationHotTesla - saturationColdTesla) * (bounded - 25) / 75;
    }

    /** This one with what a sheet says itself in place of the table's; empty ones stay. */
    public CoreMaterial with(
            OptionalDouble lossK,
            OptionalDouble lossAlpha,
            OptionalDouble lossBeta,
            OptionalDouble coldTesla,
            OptionalDouble hotTesla,
            OptionalDouble relativePermeability) {
        boolean own = lossK.isPresent()
                || lossAlpha.isPresent()
                || lossBeta.isPresent()
                || coldTesla.isPresent()
                || hotTesla.isPresent()
                || relativePermeability.isPresent();
        double cold = coldTesla.orElse(Math.max(saturationColdTesla, hotTesla.orElse(0)));
        return new CoreMaterial(
                name,
                lossK.orElse(k),
                lossAlpha.orElse(alpha),
                lossBeta.orElse(beta),
                ct2,
                ct1,
                ct0,
                cold,
                hotTesla.orElse(Math.min(saturationHotTesla, cold)),
                relativePermeability.orElse(permeability),
                own ? source + "; the sheet's own numbers where it gives them" : source);
    }
}
