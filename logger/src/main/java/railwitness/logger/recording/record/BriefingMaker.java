package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import railwitness.analysis.design.ColdResistance;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.Rail;
import railwitness.analysis.design.RailBounds;
import railwitness.analysis.design.Stress;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.logger.recording.plan.Hold;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.safety.caution.Briefing;
import railwitness.safety.caution.Checklist;
import railwitness.safety.caution.Hazards;

/** The three sheets as what can hurt: the numbers that cautions and checklist are worked out from. */
public final class BriefingMaker {
    /** Least resistances where the design sheet states none, ohm (common practice, no source). */
    private static final double LEAST_INPUT_OHMS = 10;

    private static final double LEAST_SWITCH_OHMS = 1000;
    private static final double LEAST_RAIL_OHMS = 100;
    private static final double UNKNOWN_FARADS = 0.01;
    private static final double HOT_DEGC = 70;
    private static final int SWITCH_BANKS = 2;

    private final Design design;
    private final BenchSheet bench;
    private final Plan plan;

    private BriefingMaker(Sheets sheets) {
        this.design = sheets.design().content();
        this.bench = sheets.bench().content();
        this.plan = sheets.plan().content();
    }

    public static Briefing of(Sheets sheets) {
        BriefingMaker maker = new BriefingMaker(sheets);
        return sheets.bench().content().isSetByHand()
                ? Briefing.ofKnobs(maker.hazards(), maker.checklist())
                : Briefing.of(maker.hazards(), maker.checklist());
    }

    /** Terminals that the wiring of the bench joins or earths. */
    static List<String> joined(Sheets sheets) {
        return new BriefingMaker(sheets).joined();
    }

    private Hazards hazards() {
        double highest = Math.max(
                plan.highestInputVolts(RunSetup.ratingOf(design)),
                design.input().nominalVolts());
        List<RailBounds> rails = design.rails().stream()
                .map(rail -> RailBounds.of(design, rail, highest))
                .toList();
        RailBounds nearest = rails.stream()
                .max(Comparator.comparingDouble(BriefingMaker::shareOfRating))
                .orElseThrow();
        double farads = design.filter()
                .map(filter -> filter.capacitorMicrofarads().orElse(UNKNOWN_FARADS * 1e6) * 1e-6)
                .orElse(UNKNOWN_FARADS);
        double amps = design.input()
                .highestAmperes()
                .orElse(design.limits().inputAmperes().orElse(30));
        return new Hazards(
                Stress.of(design, highest).betweenVolts().orElseGet(() -> between(rails)),
                nearest.expectedVolts(),
                farads,
                nearest.ratingVolts().orElse(nearest.expectedVolts() * 2),
                rails.stream()
                        .mapToDouble(rail -> Hazards.joules(farads, rail.expectedVolts()))
                        .sum(),
                highest,
                design.input().capacitorRatingVolts(),
                amps,
                design.input().fuseAmperes(),
                design.limits().heatsinkDegC().orElse(HOT_DEGC),
                joined(),
                bench.source(),
                false,
                FirstPowerSettings.touchVolts(design));
    }

    /** Of how much of its capacitors' rating a rail makes use; of rails without a rating the highest counts. */
    private static double shareOfRating(RailBounds rail) {
        return rail.ratingVolts().isPresent()
                ? rail.expectedVolts() / rail.ratingVolts().getAsDouble()
                : rail.expectedVolts() * 1e-6;
    }

    private double between(List<RailBounds> rails) {
        double highest =
                rails.stream().mapToDouble(RailBounds::expectedVolts).max().orElse(0);
        boolean positive = design.rails().stream().anyMatch(rail -> rail.nominalVolts() > 0);
        boolean negative = design.rails().stream().anyMatch(rail -> rail.nominalVolts() < 0);
        return positive && negative ? 2 * highest : highest;
    }

    /** Terminals that the wiring of a bench joins, whether anybody thinks of it or not. */
    private List<String> joined() {
        List<String> joined = new ArrayList<>();
        for (InstrumentSheet instrument : bench.instruments()) {
            if (instrument.duty() instanceof Duty.AsScope) {
                joined.add("the ground clip of " + instrument.name()
                        + " is joined to earth and to its serial lead; it belongs on 0 V, never on a rail");
            } else if (instrument.shuntTolerancePct() > 0) {
                joined.add("the serial lead of " + instrument.name()
                        + " may join its low terminal to earth and bypass a shunt in the minus lead; use an isolated"
                        + " lead, or put the shunt into the plus lead");
            }
        }
        long loads = bench.instruments().stream()
                .filter(instrument -> instrument.duty() instanceof Duty.AsLoad)
                .count();
        if (loads > 1) {
            joined.add("the loads' serial leads may join their minus terminals: on one of two rails that is a short"
                    + " from rail to 0 V; check with a meter before connecting");
        }
        return joined;
    }

    private Checklist checklist() {
        ColdResistance cold = design.coldResistance();
        Checklist list = Checklist.of(
                cold.inputOhmsAtLeast().orElse(LEAST_INPUT_OHMS),
                SWITCH_BANKS,
                cold.switchOhmsAtLeast().orElse(LEAST_SWITCH_OHMS),
                design.rails().stream().map(Rail::name).toList(),
                cold.railOhmsAtLeast().orElse(LEAST_RAIL_OHMS));
        boolean left = plan.stages().stream()
                .anyMatch(
                        stage -> stage instanceof Hold hold && hold.leftAlone().isPresent());
        return left ? list.leftAlone() : list;
    }
}
