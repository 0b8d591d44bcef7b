package railwitness.analysis.soak;

/**
 * Life of an electrolytic capacitor by the ten-degree rule, L = L0 2^((T0 - T) / 10): common practice, not a standard.
 *
 * @param ratedHours life at the rated temperature, above 0
 * @param ratedCelsius rated temperature
 */
public record CapacitorLife(double ratedHours, double ratedCelsius) {
    public CapacitorLife {
        if (!(ratedHours > 0)) {
            throw new IllegalArgumentException("rated life is " + ratedHours + " h: must be above 0");
        }
    }

    /** Hours at a steady temperature of the capacitor. */
    public double hoursAt(double celsius) {
        return ratedHours * Math.pow(2, (ratedCelsius - celsius) / 10);
    }

    /**
     * Hours under a profile run over and over.
     *
     * @param hours length of each part, above 0 in sum
     * @param celsius temperature of each part
     */
    public double hoursUnder(double[] hours, double[] celsius) {
        double used = 0;
        double total = 0;
        for (int i = 0; i < hours.length; i++) {
            used += hours[i] / hoursAt(celsius[i]);
            total += hours[i];
        }
        return total / used;
    }

    /** The steady temperature that would use life up as fast; above the mean of the profile. */
    public double equivalentCelsius(double[] hours, double[] celsius) {
        return ratedCelsius - 10 * Math.log(hoursUnder(hours, celsius) / ratedHours) / Math.log(2);
    }
}
