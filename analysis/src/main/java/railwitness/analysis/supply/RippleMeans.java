package railwitness.analysis.supply;

import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Band;

/**
 * How ripple was measured.
 *
 * @param bands of the ripple meter on each rail, where stated
 * @param waveforms of each rail at full load, where a scope was there
 */
public record RippleMeans(Map<String, Band> bands, Map<String, RippleWaveform> waveforms) {
    public RippleMeans {
        bands = Map.copyOf(bands);
        waveforms = Map.copyOf(waveforms);
    }

    /** Nothing is stated. */
    public static RippleMeans unknown() {
        return new RippleMeans(Map.of(), Map.of());
    }

    Optional<Band> band(String rail) {
        return Optional.ofNullable(bands.get(rail));
    }

    Optional<RippleWaveform> waveform(String rail) {
        return Optional.ofNullable(waveforms.get(rail));
    }
}
