package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.converter.Part;
import railwitness.analysis.converter.Parts;
import railwitness.analysis.design.Design;

/**
 * Every fault to be tried, with the sizes it usually has. Sizes and how often a fault occurs are common practice, no
 * source.
 */
final class Candidates {
    private static final double SHORT_OHMS = 0.2;
    private static final double LEAK_SHARE = 0.01;
    private static final double UNKNOWN_TURNS = 4;

    private final Design design;
    private final Parts parts;
    private final List<Candidate> all = new ArrayList<>();

    private Candidates(Design design, Parts parts) {
        this.design = design;
        this.parts = parts;
    }

    /** @param recording what was measured: what it cannot show is not tried */
    static List<Candidate> of(Design design, Parts parts, Recording recording) {
        Candidates candidates = new Candidates(design, parts);
        candidates.transformer();
        candidates.primarySide();
        candidates.rails();
        if (recording.stopped().isEmpty()) {
            candidates.all.removeIf(one -> one.kind() == Candidate.Kind.STOPPING);
        }
        if (!recording.showsHeat()) {
            candidates.all.removeIf(one -> one.kind() == Candidate.Kind.GROWING);
        }
        if (recording.sightings().stream().noneMatch(one -> one.kind() == Sighting.Kind.STANDBY)) {
            candidates.all.removeIf(one -> one.code().equals(Optional.of(CauseCode.LEAKY_SWITCH)));
        }
        return candidates.all;
    }

    private void transformer() {
        double turns =
                design.transformer().map(known -> (double) known.primaryTurns()).orElse(UNKNOWN_TURNS);
        double turnVolts = parts.get(Part.NOMINAL_INPUT) / turns;
        double turnWatts = 2 * parts.get(Part.DUTY) * turnVolts * turnVolts / SHORT_OHMS;
        all.add(Candidate.sized(
                CauseCode.SHORTED_TURN, 1, turnWatts, 1.0, (sound, watts) -> sound.plus(Part.SQUARE_WATTS, watts)));
        all.add(Candidate.sized(
                CauseCode.WEAK_CORE, 1, 2.5, 0.7, (sound, more) -> sound.times(Part.CORE_WATTS, 1 + more)));
        all.add(Candidate.plain(CauseCode.WEAK_HALF, 0.7, (sound, none) -> sound.with(Part.HALF_2_OHMS, Parts.OPEN)));
        double loop = parts.get(Part.SECONDARY_OHMS) + parts.get(Part.DIODE_OHMS);
        all.add(Candidate.sized(
                CauseCode.WEAK_HALF, 0.3, 10 * loop, 1.0, (sound, ohms) -> sound.plus(Part.HALF_2_OHMS, ohms)));
        all.add(Candidate.plain(CauseCode.DEAD_DRIVE, 1, (sound, none) -> sound.with(Part.SIDE_2_OHMS, Parts.OPEN)));
        design.transformer().ifPresent(known -> turns(known.secondaryTurns()));
    }

    private void turns(int turns) {
        for (int more : new int[] {-1, 1, -2, 2, -3, 3, -4, 4}) {
            if (turns + more < 1) {
                continue;
            }
            double weight = 0.5 / (more * more);
            double factor = (turns + more) / (double) turns;
            all.add(Candidate.plain(CauseCode.WRONG_TURNS, weight, (sound, none) -> sound.with(Part.HALF_1, factor)
                    .with(Part.HALF_2, factor)));
            if (Math.abs(more) <= 2) {
                all.add(Candidate.plain(
                                CauseCode.WRONG_TURNS, weight / 2, (sound, none) -> sound.with(Part.HALF_2, factor))
                        .at("one half"));
            }
        }
    }

    private void primarySide() {
        double full = 0;
        for (int rail = 0; rail < parts.rails().size(); rail++) {
            OptionalDouble amperes = design.rails().get(rail).fullLoadAmperes();
            full += amperes.orElse(2) * Math.abs(design.rails().get(rail).nominalVolts());
        }
        double input = parts.get(Part.NOMINAL_INPUT);
        double scale = input * input / full;
        all.add(Candidate.sized(
                CauseCode.LEAD_RESISTANCE, 0.7, 0.03 * scale, 1.0, (sound, ohms) -> sound.plus(Part.FEED_OHMS, ohms)));
        all.add(Candidate.sized(CauseCode.LEAD_RESISTANCE, 0.3, 0.03 * scale, 1.0, (sound, ohms) -> sound)
                .beforeTheTerminals());
        all.add(Candidate.sized(
                CauseCode.DEAD_PARALLEL_SWITCH,
                0.5,
                2 * parts.get(Part.SWITCH_OHMS),
                1.0,
                (sound, ohms) -> sound.plus(Part.SIDE_2_OHMS, ohms)));
        all.add(Candidate.sized(
                CauseCode.SLOW_DRIVE,
                0.5,
                0.04 * input,
                0.8,
                (sound, watts) -> sound.plus(Part.OVERLAP_WATTS_PER_AMPERE, watts)));
        all.add(Candidate.sized(
                        CauseCode.HOT_JOINT, 0.2, 0.03 * scale, 1.0, (sound, ohms) -> sound.plus(Part.FEED_OHMS, ohms))
                .growing());
        all.add(Candidate.sized(
                        CauseCode.THERMAL_RUNAWAY,
                        0.2,
                        LEAK_SHARE * full,
                        1.0,
                        (sound, watts) -> sound.plus(Part.FIXED_WATTS, watts))
                .doubling());
        all.add(Candidate.plain(CauseCode.HICCUP, 0.5, (sound, none) -> sound).stopping());
        all.add(Candidate.sized(
                CauseCode.LEAKY_SWITCH, 0.7, 0.05, 1.3, (sound, amperes) -> sound.plus(Part.STANDBY_AMPERES, amperes)));
    }

    private void rails() {
        for (int rail = 0; rail < parts.rails().size(); rail++) {
            int index = rail;
            String name = parts.rails().get(rail);
            all.add(Candidate.plain(
                            CauseCode.DEAD_RECTIFIER,
                            0.5,
                            (sound, none) -> sound.with(Part.DIODE_2_OHMS, index, Parts.OPEN))
                    .on(name));
            all.add(Candidate.sized(CauseCode.TIRED_CAPACITOR, 0.5, 4, 1.0, (sound, more) -> tired(sound, index, more))
                    .on(name));
            double amperes = design.rails().get(rail).fullLoadAmperes().orElse(2);
            double siemens = amperes / Math.abs(design.rails().get(rail).nominalVolts());
            all.add(Candidate.sized(
                            CauseCode.SHORTED_RECTIFIER,
                            0.3,
                            0.1 * siemens,
                            1.2,
                            (sound, more) -> sound.with(
                                    Part.BLEEDER_SIEMENS, index, sound.get(Part.BLEEDER_SIEMENS, index) + more))
                    .on(name));
            all.add(Candidate.sized(
                            CauseCode.SHORT_UNDER_LOAD,
                            0.1,
                            0.1 * siemens,
                            1.2,
                            (sound, more) -> sound.with(
                                    Part.BLEEDER_SIEMENS, index, sound.get(Part.BLEEDER_SIEMENS, index) + more))
                    .on(name)
                    .underLoad());
        }
        all.add(Candidate.sized(CauseCode.TIRED_CAPACITOR, 0.3, 4, 1.0, (sound, more) -> {
            Parts both = sound;
            for (int rail = 0; rail < parts.rails().size(); rail++) {
                both = tired(both, rail, more);
            }
            return both;
        }));
    }

    /** A capacitor that dried out loses capacitance as its resistance grows (rough). */
    private static Parts tired(Parts sound, int rail, double more) {
        return sound.with(Part.CAPACITOR_OHMS, rail, sound.get(Part.CAPACITOR_OHMS, rail) * (1 + more))
                .with(Part.CAPACITOR, rail, sound.get(Part.CAPACITOR, rail) / (1 + 0.25 * more));
    }
}
