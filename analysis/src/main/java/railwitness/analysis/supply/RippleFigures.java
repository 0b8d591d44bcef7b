package railwitness.analysis.supply;

import static railwitness.analysis.design.FigureName.DRAIN_SPIKE;
import static railwitness.analysis.design.FigureName.DRIVE_DROOP;
import static railwitness.analysis.design.FigureName.DRIVE_DUTY;
import static railwitness.analysis.design.FigureName.DRIVE_FREQUENCY;
import static railwitness.analysis.design.FigureName.PEAK_DRAIN_VOLTAGE;
import static railwitness.analysis.design.FigureName.RIPPLE;
import static railwitness.analysis.design.FigureName.RIPPLE_PEAK_TO_PEAK;
import static railwitness.analysis.design.FigureName.VOLT_SECONDS;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import railwitness.analysis.design.Band;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.Switches;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/** Ripple by meter and by waveform. */
final class RippleFigures {
    private final Points points;
    private final RippleMeans means;
    private final Figures.Ledger ledger;

    RippleFigures(Points points, RippleMeans means, Figures.Ledger ledger) {
        this.points = points;
        this.means = means;
        this.ledger = ledger;
    }

    void enter() {
        Set<String> rails = new LinkedHashSet<>(points.rails());
        rails.addAll(new TreeSet<>(means.waveforms().keySet()));
        for (String rail : rails) {
            byMeter(rail);
            means.waveform(rail)
                    .ifPresentOrElse(
                            wave -> ledger.enter(RIPPLE_PEAK_TO_PEAK, Optional.of(rail), wave.peakToPeak(), wave.at()),
                            () -> ledger.miss(RIPPLE_PEAK_TO_PEAK, Optional.of(rail), "needs a waveform"));
        }
        means.drainPeak()
                .ifPresentOrElse(
                        peak -> ledger.enter(PEAK_DRAIN_VOLTAGE, Optional.empty(), peak, atDrain(peak)),
                        () -> ledger.miss(PEAK_DRAIN_VOLTAGE, Optional.empty(), "needs a waveform of a drain"));
        means.drive().ifPresent(this::drive);
    }

    private void drive(DriveWaveform drive) {
        String at = "waveform of a drain";
        ledger.enter(DRIVE_FREQUENCY, Optional.empty(), drive.frequencyHz(), at);
        ledger.enter(DRIVE_DUTY, Optional.empty(), drive.duty(), at);
        ledger.enter(VOLT_SECONDS, Optional.empty(), drive.voltSeconds(), at);
        other(DRIVE_DROOP, drive.droop(), at);
        other(DRAIN_SPIKE, drive.spike(), at);
    }

    private void other(FigureName name, Optional<Estimate> found, String at) {
        found.ifPresentOrElse(
                value -> ledger.enter(name, Optional.empty(), value, at),
                () -> ledger.miss(name, Optional.empty(), "this drain shows no other switch"));
    }

    private String atDrain(Estimate peak) {
        OptionalDouble rating = points.design()
                .flatMap(Design::switches)
                .map(Switches::ratingVolts)
                .orElse(OptionalDouble.empty());
        return rating.isEmpty()
                ? "full load, rating of the switches not on the sheet"
                : String.format(
                        Locale.ROOT,
                        "full load, %.0f %% of the switches' rating of %.4g V",
                        100 * peak.value() / rating.getAsDouble(),
                        rating.getAsDouble());
    }

    private void byMeter(String rail) {
        Optional<Estimate> read =
                points.fullLoad().flatMap(full -> full.rail(rail).flatMap(RailPoint::rippleRms));
        if (read.isEmpty()) {
            byWaveform(rail);
            return;
        }
        Optional<Band> band = means.band(rail);
        if (RippleReach.of(band, cycleHz()) == RippleReach.BELOW) {
            ledger.miss(
                    RIPPLE,
                    Optional.of(rail),
                    String.format(
                            Locale.ROOT,
                            "not measurable with this meter: its band %s leaves out the ripple at %.0f kHz",
                            band.orElseThrow(),
                            cycleHz().orElseThrow() / 500));
            return;
        }
        ledger.enter(RIPPLE, Optional.of(rail), withLoss(read.get(), band), "full load, " + bandWords(band));
    }

    /** What a meter whose band covers the ripple may still lose of it, unless the sheet means that very band. */
    private Estimate withLoss(Estimate read, Optional<Band> band) {
        if (RippleReach.of(band, cycleHz()) != RippleReach.COVERS || meant(band)) {
            return read;
        }
        double half = RippleReach.lostShare(band.orElseThrow(), cycleHz().orElseThrow()) * read.value();
        return read.with(Influence.rectangular("ripple above the meter's band", Math.abs(half), "V")
                .times(1));
    }

    private boolean meant(Optional<Band> band) {
        return points.design().stream()
                .flatMap(sheet -> sheet.requirements().stream())
                .anyMatch(asked -> asked.figure() == RIPPLE
                        && asked.band().isPresent()
                        && asked.band().equals(band));
    }

    private String bandWords(Optional<Band> band) {
        if (band.isEmpty()) {
            return "band of the meter not known";
        }
        if (cycleHz().isEmpty()) {
            return "band " + band.get() + ", switching frequency not known";
        }
        double lost = RippleReach.lostShare(band.get(), cycleHz().getAsDouble());
        return String.format(Locale.ROOT, "band %s, up to %.0f %% may lie above it", band.get(), 100 * lost);
    }

    private void byWaveform(String rail) {
        means.waveform(rail)
                .ifPresentOrElse(
                        wave -> ledger.enter(RIPPLE, Optional.of(rail), wave.rms(), wave.at()),
                        () -> ledger.miss(
                                RIPPLE,
                                Optional.of(rail),
                                points.fullLoad().isEmpty()
                                        ? "no point at full load on all rails"
                                        : "no ripple meter on this rail"));
    }

    private OptionalDouble cycleHz() {
        return points.design().map(sheet -> sheet.converter().frequencyHz()).orElse(OptionalDouble.empty());
    }
}
