package railwitness.analysis.supply;

import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.Band;
import railwitness.analysis.uncertainty.Estimate;

/**
 * How ripple, and what else a scope shows, was measured.
 *
 * @param bands of the ripple meter on each rail, where stated
 * @param waveforms of each rail at full load, where a scope was there
 * @param drainPeak highest of a switch's drain voltage at full load, V, where a scope looked at it
 * @param drive what that drain shows of the drive; empty where it is no course of a switch
 */
public record RippleMeans(
        Map<String, Band> bands,
        Map<String, RippleWaveform> waveforms,
        Optional<Estimate> drainPeak,
        Optional<DriveWaveform> drive) {
    public RippleMeans {
        bands = Map.copyOf(bands);
        waveforms = Map.copyOf(waveforms);
    }

    /** Without a look at a drain. */
    public RippleMeans(Map<String, Band> bands, Map<String, RippleWaveform> waveforms) {
        this(bands, waveforms, Optional.empty(), Optional.empty());
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
