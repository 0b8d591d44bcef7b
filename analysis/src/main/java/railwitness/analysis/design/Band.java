package railwitness.analysis.design;

/**
 * A band of frequencies, -3 dB to -3 dB: {@code band_Hz = [low, high]}.
 *
 * @param lowHz 0 or more
 * @param highHz above the low end
 */
public record Band(double lowHz, double highHz) {
    public Band {
        Allowed.require(Double.isFinite(lowHz) && lowHz >= 0, "band_Hz low end", lowHz, "must be 0 or more");
        Allowed.require(
                Double.isFinite(highHz) && highHz > lowHz, "band_Hz high end", highHz, "must be above its low end");
    }

    @Override
    public String toString() {
        return Allowed.text(lowHz) + " Hz to " + Allowed.text(highHz / 1000) + " kHz";
    }
}
