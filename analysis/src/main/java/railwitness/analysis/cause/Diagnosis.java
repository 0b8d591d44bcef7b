package railwitness.analysis.cause;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.design.SheetRequirement;
import railwitness.analysis.expected.SheetParts;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.supply.RippleMeans;

/**
 * The cause from the whole recording: every fault on the list, 'sound' and 'something else' are fitted to all points at
 * once, with the parts' tolerances as priors, and ranked by their evidence. A cause is named only where 'sound' has
 * become improbable.
 */
public final class Diagnosis {
    private static final double SOUND_WEIGHT = 4;
    private static final double ANYTHING_WEIGHT = 0.5;

    /** Below this probability "sound" is given up: it is then less probable than that something is wrong. */
    private static final double SOUND_AT_MOST = 0.5;

    /**
     * Natural logarithm of the factor by which the best fault must explain the recording better than a sound unit does: 10 to
     * the half, below which a comparison is "not worth more than a bare mention" (Jeffreys, Theory of Probability, 3rd edition,
     * appendix B; from memory).
     */
    private static final double LEAST_SUPPORT = Math.log(10) / 2;

    /** Shares below this are not worth a line. */
    private static final double LEAST_SHARE = 0.01;

    /** Another cause at least this share of the first one's is not told apart. */
    private static final double NOT_TOLD_APART = 0.1;

    /** How many candidates, after a first look, get sensitivities of their own. */
    private static final int FINALISTS = 4;

    /** Below this probability of readings so far off, one fault leaves a large rest. */
    private static final double LARGE_REST = 1e-3;

    private static final double NEAR_ENOUGH = 12;
    private static final double WORTH_A_FIT = 30;
    private static final double WORTH_A_SECOND_LOOK = 100;

    /** Squares below this share of the sightings' number leave nothing to explain. */
    private static final double WELL = 0.8;

    private final List<Cause> causes;
    private final double sound;
    private final double anything;

    private Diagnosis(List<Cause> causes, double sound, double anything) {
        this.causes = List.copyOf(causes);
        this.sound = sound;
        this.anything = anything;
    }

    /**
     * Causes of what was found, best first; none where nothing is wrong, or where nothing on the list explains it.
     *
     * @param leadOhms what the bench sheet says lies between source and terminals
     */
    public static List<Cause> of(
            Points points, Design design, Figures figures, RippleMeans ripple, OptionalDouble leadOhms) {
        return of(points, design, ripple, leadOhms).causes();
    }

    /** The whole diagnosis, with the shares of 'sound' and 'something else'. */
    public static Diagnosis of(Points points, Design design, RippleMeans ripple, OptionalDouble leadOhms) {
        SheetParts sheet = SheetParts.of(design);
        Recording recording = new Recording(
                design, points.all(), ripple, leadOhms, sheet.parts().choke());
        standbyLimit(design).ifPresent(limit -> points.stage("standby").stream()
                .findFirst()
                .map(OperatingPoint::input)
                .ifPresent(input -> recording.standby(input.current(), limit)));
        recording.nominal(sheet);
        if (recording.sightings().isEmpty()) {
            return new Diagnosis(List.of(), 1, 0);
        }
        return new Ranking(recording, sheet, Candidates.of(design, sheet.parts(), recording)).diagnosis();
    }

    /** Whether what is off is explained. */
    public Explained explained(boolean somethingIsOff) {
        if (!causes.isEmpty()) {
            return Explained.BY_A_CAUSE;
        }
        return somethingIsOff ? Explained.NO_KNOWN_FAULT : Explained.NOTHING_OFF;
    }

    /** Probable causes, best first. */
    public List<Cause> causes() {
        return causes;
    }

    /** Probability that the unit is sound, 0 to 1. */
    public double soundShare() {
        return sound;
    }

    /** Probability that something is wrong that is not on the list, 0 to 1. */
    public double somethingElseShare() {
        return anything;
    }

    /** What counts as much in standby: the requirement, else the limit. */
    private static OptionalDouble standbyLimit(Design design) {
        return design.requirements().stream()
                .filter(requirement -> requirement.figure() == FigureName.STANDBY_CURRENT)
                .map(SheetRequirement::atMost)
                .filter(OptionalDouble::isPresent)
                .findFirst()
                .orElse(design.limits().standbyAmperes());
    }

    private static final class Ranking {
        private final Recording recording;
        private final SheetParts sheet;
        private final List<Candidate> candidates;
        private final PartsFit fit;
        private final List<double[]> errors;

        Ranking(Recording recording, SheetParts sheet, List<Candidate> candidates) {
            this.recording = recording;
            this.sheet = sheet;
            this.candidates = candidates;
            this.fit = new PartsFit(recording, sheet);
            this.errors = recording.modelErrors();
        }

        private record Weighed(PartsFit.Fitted fitted, double logWeight) {
            CauseCode code() {
                return fitted.candidate().code().orElseThrow();
            }
        }

        Diagnosis diagnosis() {
            Candidate none = Candidate.sound(SOUND_WEIGHT);
            double[] nominal = fit.nominal();
            double[][] sensitivities = fit.sensitivities(none, nominal);
            PartsFit.Fitted first = fit.fit(none, nominal, sensitivities, errors);
            PartsFit.Fitted sound = fit.fit(none, first.state(), fit.sensitivities(none, first.state()), errors);
            sound = sound.squares() <= first.squares() ? sound : first;
            List<double[]> wide = new ArrayList<>(errors);
            wide.addAll(recording.anything());
            PartsFit.Fitted anything = fit.fit(Candidate.sound(ANYTHING_WEIGHT), nominal, sensitivities, wide);
            Look look = new Look(sound, nominal, sensitivities, fit.sensitivities(none, sound.state()));
            List<Weighed> faults = faults(look);
            refine(faults, sound.logEvidence() + Math.log(SOUND_WEIGHT));
            sound = fromTheBest(sound, faults);
            double soundLog = sound.logEvidence() + Math.log(SOUND_WEIGHT);
            double anythingLog = anything.logEvidence() + Math.log(ANYTHING_WEIGHT);
            pairs(faults, Math.max(soundLog, anythingLog), nominal);
            return shares(faults, sound, soundLog, anythingLog);
        }

        /** A sound unit too may be fitted best from where the best faults ended; it must not lose by a worse search. */
        private PartsFit.Fitted fromTheBest(PartsFit.Fitted sound, List<Weighed> faults) {
            PartsFit.Fitted best = sound;
            Candidate none = Candidate.sound(SOUND_WEIGHT);
            for (Weighed fault : faults.subList(0, Math.min(FINALISTS, faults.size()))) {
                double ahead = fault.fitted().logEvidence() - best.logEvidence();
                if (ahead < 0 || ahead > NEAR_ENOUGH) {
                    continue;
                }
                double[] state = fault.fitted().state().clone();
                state[state.length - 1] = 0;
                for (int again = 0; again < 2; again++) {
                    PartsFit.Fitted fitted = fit.fit(none, state, fit.sensitivities(none, state), errors);
                    best = fitted.logEvidence() > best.logEvidence() ? fitted : best;
                    state = fitted.state();
                }
            }
            return best;
        }

        /** Where the best single fault leaves a large rest: it with each other one. */
        private void pairs(List<Weighed> faults, double others, double[] nominal) {
            if (faults.isEmpty()) {
                return; // a recording too short to show any of them
            }
            Weighed best = faults.get(0);
            if (others > best.logWeight() + NEAR_ENOUGH
                    || fitOf(best.fitted()) > LARGE_REST
                    || best.logWeight() < others - 4 * NEAR_ENOUGH) {
                return;
            }
            double all = SOUND_WEIGHT
                    + candidates.stream().mapToDouble(Candidate::weight).sum();
            Candidate first = best.fitted().candidate().fixed(best.fitted().size());
            double[] state = best.fitted().state().clone();
            state[state.length - 1] = 0;
            double[][] own = fit.sensitivities(first, state);
            List<Weighed> found = new ArrayList<>();
            for (Candidate second : candidates) {
                if (!second.code().equals(first.code()) || !second.rail().equals(first.rail())) {
                    found.add(weighed(fit.fit(first.with(second, all), nominal, own, errors)));
                }
            }
            faults.addAll(found);
            faults.sort(Comparator.comparingDouble(one -> -one.logWeight()));
        }

        private double fitOf(PartsFit.Fitted fitted) {
            return 1 - new ChiSquaredDistribution(recording.sightings().size()).cumulativeProbability(fitted.squares());
        }

        private static Weighed weighed(PartsFit.Fitted fitted) {
            return new Weighed(
                    fitted, fitted.logEvidence() + Math.log(fitted.candidate().weight()));
        }

        /** From where faults are looked at: the sheet as it is, and what fits best with nothing wrong. */
        private record Look(PartsFit.Fitted sound, double[] nominal, double[][] atNominal, double[][] atSound) {}

        /** Glances at all from both places, then fits those that may come to something. */
        private List<Weighed> faults(Look look) {
            List<Weighed> faults = new ArrayList<>();
            List<Boolean> fromSound = new ArrayList<>();
            double[] start = look.sound().state().clone();
            for (Candidate candidate : candidates) {
                faults.add(weighed(fit.glance(candidate, look.nominal(), look.atNominal(), errors)));
            }
            double first = faults.stream().mapToDouble(Weighed::logWeight).max().orElseThrow();
            for (int i = 0; i < faults.size(); i++) {
                boolean hopeless = faults.get(i).logWeight() < first - WORTH_A_SECOND_LOOK;
                Weighed other = hopeless
                        ? faults.get(i)
                        : weighed(fit.glance(candidates.get(i), start, look.atSound(), errors));
                boolean better = other.logWeight() > faults.get(i).logWeight();
                faults.set(i, better ? other : faults.get(i));
                fromSound.add(better);
            }
            double best = faults.stream().mapToDouble(Weighed::logWeight).max().orElseThrow();
            boolean nothingLeft =
                    look.sound().squares() < WELL * recording.sightings().size()
                            && best < look.sound().logEvidence() + Math.log(SOUND_WEIGHT);
            for (int i = 0; i < faults.size() && !nothingLeft; i++) {
                Candidate candidate = faults.get(i).fitted().candidate();
                if (faults.get(i).logWeight() > best - WORTH_A_FIT) {
                    double[] from = faults.get(i).fitted().state();
                    double[][] near = fromSound.get(i) ? look.atSound() : look.atNominal();
                    faults.set(i, weighed(fit.fit(candidate, from, near, errors)));
                }
            }
            return faults;
        }

        /** Fits the best again, with sensitivities taken where they are. */
        private void refine(List<Weighed> faults, double sound) {
            if (faults.isEmpty()) {
                return;
            }
            faults.sort(Comparator.comparingDouble(one -> -one.logWeight()));
            double best = faults.get(0).logWeight();
            if (best < sound - NEAR_ENOUGH / 3) {
                return;
            }
            for (int i = 0; i < Math.min(FINALISTS, faults.size()); i++) {
                Weighed one = faults.get(i);
                if (best - one.logWeight() > NEAR_ENOUGH) {
                    break;
                }
                Candidate candidate = one.fitted().candidate();
                double[][] own = fit.sensitivities(candidate, one.fitted().state());
                PartsFit.Fitted again = fit.fit(candidate, one.fitted().state(), own, errors);
                faults.set(i, weighed(again));
            }
            faults.sort(Comparator.comparingDouble(one -> -one.logWeight()));
        }

        private Diagnosis shares(List<Weighed> faults, PartsFit.Fitted sound, double soundLog, double anythingLog) {
            double top = Math.max(
                    Math.max(soundLog, anythingLog),
                    faults.isEmpty() ? Double.NEGATIVE_INFINITY : faults.get(0).logWeight());
            double soundPart = Math.exp(soundLog - top);
            double anythingPart = Math.exp(anythingLog - top);
            double sum = soundPart + anythingPart;
            Map<String, Double> parts = new LinkedHashMap<>();
            Map<String, Weighed> best = new LinkedHashMap<>();
            for (Weighed fault : faults) {
                double part = Math.exp(fault.logWeight() - top);
                Candidate candidate = fault.fitted().candidate();
                String key = fault.code() + candidate.rail().orElse("");
                parts.merge(key, part, Double::sum);
                best.putIfAbsent(key, fault);
                sum += part;
            }
            double total = sum;
            List<Cause> causes = new ArrayList<>();
            if (speaksFor(faults, sound) && soundPart / total <= SOUND_AT_MOST && anythingPart / total < 0.5) {
                List<String> keys = parts.entrySet().stream()
                        .filter(entry -> entry.getValue() / total >= LEAST_SHARE)
                        .sorted(Comparator.comparingDouble(entry -> -entry.getValue()))
                        .map(Map.Entry::getKey)
                        .toList();
                for (String key : keys) {
                    causes.add(cause(best.get(key), parts.get(key) / total, sound, alike(key, keys, parts, best)));
                }
            }
            return new Diagnosis(causes, soundPart / total, anythingPart / total);
        }

        /** Many faults that all explain nothing would together outweigh a sound unit; one of them must explain something. */
        private static boolean speaksFor(List<Weighed> faults, PartsFit.Fitted sound) {
            return faults.stream().anyMatch(one -> one.fitted().logEvidence() > sound.logEvidence() + LEAST_SUPPORT);
        }

        private static List<CauseCode> alike(
                String key, List<String> keys, Map<String, Double> parts, Map<String, Weighed> best) {
            List<CauseCode> alike = new ArrayList<>();
            double own = parts.get(key);
            for (String other : keys) {
                double share = parts.get(other);
                if (Math.min(share, own) >= NOT_TOLD_APART * Math.max(share, own)) {
                    alike.add(best.get(other).code());
                }
            }
            CauseCode code = best.get(key).code();
            alike.addAll(code.alike(best.get(key).fitted().candidate().place()));
            return alike.stream().filter(other -> other != code).distinct().toList();
        }

        private Cause cause(Weighed one, double share, PartsFit.Fitted sound, List<CauseCode> alike) {
            List<String> supports = new ArrayList<>();
            List<String> against = new ArrayList<>();
            List<Sighting> sightings = recording.sightings();
            double[] withFault = one.fitted().predicted();
            record Spoken(double weight, String words) {}
            List<Spoken> spoken = new ArrayList<>();
            for (int i = 0; i < sightings.size(); i++) {
                Sighting sighting = sightings.get(i);
                if (sighting.kind() == Sighting.Kind.NOMINAL) {
                    continue;
                }
                double before = squared(sighting, sound.predicted()[i]);
                double now = squared(sighting, withFault[i]);
                if (before - now > 2) {
                    spoken.add(new Spoken(before - now, sighting.words(sound.predicted()[i]) + " of a healthy unit"));
                } else if (now > 6) {
                    against.add(sighting.words(withFault[i]) + " with this fault");
                }
            }
            spoken.stream()
                    .sorted(Comparator.comparingDouble(line -> -line.weight()))
                    .limit(4)
                    .forEach(line -> supports.add(line.words()));
            Candidate candidate = one.fitted().candidate();
            double fit = fitOf(one.fitted());
            candidate
                    .second()
                    .flatMap(Candidate::code)
                    .ifPresent(code -> supports.add(
                            0,
                            "together with: " + code.text()
                                    + candidate
                                            .second()
                                            .flatMap(Candidate::rail)
                                            .map(rail -> " (" + rail + ")")
                                            .orElse("")));
            return new Cause(
                    one.code(),
                    candidate.rail(),
                    candidate.place(),
                    share,
                    fit,
                    supports,
                    against.stream().limit(4).toList(),
                    alike,
                    checks(one.code(), alike));
        }

        /** The usual ones; before them what tells this cause from the nearest that is not told apart. */
        private static List<String> checks(CauseCode code, List<CauseCode> alike) {
            List<String> checks = new ArrayList<>(code.checks());
            List<String> telling = alike.stream()
                    .flatMap(other -> TellingApart.of(code, other).stream())
                    .limit(1)
                    .toList();
            checks.removeAll(telling);
            checks.addAll(0, telling);
            return checks;
        }

        private static double squared(Sighting sighting, double predicted) {
            double distance = (sighting.value() - predicted) / sighting.sigma();
            return distance * distance;
        }
    }
}
