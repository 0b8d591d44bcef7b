package railwitness.analysis.transformer;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.NotFound;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * A wound transformer, measured against its design.
 *
 * @param meant what the design leads to expect; empty where the sheet does not give the core
 * @param windings resistance at 20 degC and turns by the probe turn, by winding; those that were measured
 * @param figures in the order of {@link FigureName}
 * @param expected what the design leads to expect of them
 * @param notFound what the readings do not give, and what would
 * @param primary polarity of the primary halves
 * @param secondary polarity of the secondary halves
 * @param suspicions what is wrong, the gravest first; empty where nothing is
 */
public record WoundReport(
        Optional<WoundAsMeant> meant,
        Map<Half, Measured> windings,
        List<Figure> figures,
        List<Figure> expected,
        List<NotFound> notFound,
        Ratio.Polarity primary,
        Ratio.Polarity secondary,
        List<WindingDiagnosis.Suspicion> suspicions) {
    public WoundReport {
        figures = List.copyOf(figures);
        expected = List.copyOf(expected);
        notFound = List.copyOf(notFound);
        suspicions = List.copyOf(suspicions);
    }

    /**
     * One winding.
     *
     * @param ohms20 resistance at 20 degC, ohm
     * @param turns counted with one turn through the hole
     */
    public record Measured(Optional<Estimate> ohms20, Optional<Estimate> turns) {}

    /** The value of a figure that was found. */
    public Optional<Estimate> value(FigureName name) {
        return figures.stream()
                .filter(figure -> figure.name() == name)
                .map(Figure::value)
                .findFirst();
    }

    /**
     * Works it out.
     *
     * @param meant what the design leads to expect
     * @param idle what the unit draws without load, where it was run
     */
    public static WoundReport of(Optional<WoundAsMeant> meant, WoundReadings readings, Idle idle) {
        return new Maker(meant, readings, idle).report();
    }

    /** Gathers the figures one by one. */
    private static final class Maker {
        /** Of a bifilar toroid's voltage (common practice, no source). */
        private static final double DROP_SHARE = 0.003;

        private static final String LOW_DRIVE = "low drive at working frequency";

        private final Influence drop =
                Influence.rectangular("leakage and resistance of the driven half", DROP_SHARE, "1");
        private final Optional<WoundAsMeant> meant;
        private final WoundReadings read;
        private final Idle idle;
        private final List<Figure> figures = new ArrayList<>();
        private final List<Figure> expected = new ArrayList<>();
        private final List<NotFound> notFound = new ArrayList<>();
        private final Map<Half, Estimate> ohms20 = new EnumMap<>(Half.class);

        Maker(Optional<WoundAsMeant> meant, WoundReadings read, Idle idle) {
            this.meant = meant;
            this.read = read;
            this.idle = idle;
        }

        WoundReport report() {
            for (Half half : Half.values()) {
                resistance(half);
            }
            Optional<Estimate> ratioA = ratio(Half.SECONDARY_A);
            Optional<Estimate> ratioB = ratio(Half.SECONDARY_B);
            String generator = "needs primary A driven at the working frequency: drive = \"generator\" in the plan";
            put(FigureName.HALF_A_RATIO, ratioA, LOW_DRIVE, generator);
            put(FigureName.HALF_B_RATIO, ratioB, LOW_DRIVE, generator);
            put(FigureName.PRIMARY_HALVES_DIFFER, differ(Half.PRIMARY_A, Half.PRIMARY_B), LOW_DRIVE, generator);
            put(FigureName.SECONDARY_HALVES_DIFFER, differ(Half.SECONDARY_A, Half.SECONDARY_B), LOW_DRIVE, generator);
            Optional<Estimate> inductance = inductance();
            put(
                    FigureName.MAGNETISING_INDUCTANCE,
                    inductance,
                    LOW_DRIVE,
                    "needs the current of a driven primary A (sense_ohm in the plan), or ringing with ring_capacitor_uF");
            put(
                    FigureName.LEAKAGE_INDUCTANCE,
                    leakage(),
                    LOW_DRIVE,
                    "needs a driven primary A with the secondaries shorted, and its current (sense_ohm in the plan)");
            put(FigureName.CORE_LOSS, idle.coreWatts(), "in the converter, without load", idle.why());
            Optional<Estimate> knee = idle.knee().map(Maker::knee);
            put(FigureName.SATURATION_INPUT, knee, "in the converter, without load", idle.whyNoKnee());
            Optional<Estimate> hot = hot();
            put(
                    FigureName.WINDING_TEMPERATURE,
                    hot,
                    read.cooling().size() + " readings after the output went off",
                    "needs three readings of secondary A after a run, and its cold resistance: a transformer-cooling stage");
            meant.ifPresent(this::expect);
            Ratio.Polarity primary = polarity(Half.PRIMARY_A, Half.PRIMARY_B, read.primariesInSeries());
            Ratio.Polarity secondary = polarity(Half.SECONDARY_A, Half.SECONDARY_B, read.secondariesInSeries());
            WoundFigures found = new WoundFigures(
                    ratioA,
                    ratioB,
                    volts(Half.PRIMARY_B).flatMap(b -> volts(Half.PRIMARY_A).map(a -> Ratio.of(b, a))),
                    primary,
                    secondary,
                    Optional.ofNullable(ohms20.get(Half.PRIMARY_A)),
                    Optional.ofNullable(ohms20.get(Half.PRIMARY_B)),
                    Optional.ofNullable(ohms20.get(Half.SECONDARY_A)),
                    Optional.ofNullable(ohms20.get(Half.SECONDARY_B)),
                    inductance,
                    inPhase(),
                    idle.coreWatts(),
                    knee);
            return new WoundReport(
                    meant,
                    windings(),
                    figures,
                    expected,
                    notFound,
                    primary,
                    secondary,
                    meant.map(design -> WindingDiagnosis.of(design, found)).orElse(List.of()));
        }

        private void put(FigureName name, Optional<Estimate> value, String at, String why) {
            value.ifPresentOrElse(
                    found -> figures.add(new Figure(name, Optional.empty(), found, at, name.definition())),
                    () -> notFound.add(new NotFound(name, Optional.empty(), why)));
        }

        private static FigureName resistanceOf(Half half) {
            return switch (half) {
                case PRIMARY_A -> FigureName.PRIMARY_A_RESISTANCE;
                case PRIMARY_B -> FigureName.PRIMARY_B_RESISTANCE;
                case SECONDARY_A -> FigureName.SECONDARY_A_RESISTANCE;
                case SECONDARY_B -> FigureName.SECONDARY_B_RESISTANCE;
            };
        }

        private void resistance(Half half) {
            WoundReadings.BothWays ways = read.ohms().get(half);
            Optional<Estimate> ohms = Optional.empty();
            String why = "needs a current both ways through it and the voltage at its ends";
            if (ways != null) {
                try {
                    Estimate warm = FourWire.ohms(
                            ways.forwardVolts(), ways.forwardAmperes(), ways.backwardVolts(), ways.backwardAmperes());
                    ohms = Optional.of(
                            read.degC().map(degC -> FourWire.at20(warm, degC)).orElse(warm));
                } catch (IllegalArgumentException e) {
                    why = e.getMessage();
                }
            }
            ohms.ifPresent(found -> ohms20.put(half, found));
            put(resistanceOf(half), ohms, "current both ways", why);
        }

        /** The driven half carries the current, so its own leakage and resistance stand in its voltage. */
        private Optional<Estimate> volts(Half half) {
            return Optional.ofNullable(read.volts().get(half))
                    .filter(volts -> volts.value() > 0)
                    .map(volts -> half == Half.PRIMARY_A ? volts.with(drop.times(volts.value())) : volts);
        }

        private Optional<Estimate> ratio(Half half) {
            return volts(half).flatMap(own -> volts(Half.PRIMARY_A).map(driven -> Ratio.of(own, driven)));
        }

        private Optional<Estimate> differ(Half one, Half other) {
            return volts(one)
                    .flatMap(a -> volts(other).map(b -> Ratio.mismatch(a, b).scale(100)));
        }

        private Ratio.Polarity polarity(Half one, Half other, Optional<Estimate> both) {
            return both.flatMap(series -> volts(one).flatMap(a -> volts(other).map(b -> Ratio.polarity(a, b, series))))
                    .orElse(Ratio.Polarity.UNCLEAR);
        }

        private Estimate warm(Half half) {
            Estimate ohms = ohms20.get(half);
            return ohms != null ? ohms : meantOhms(half);
        }

        private Estimate meantOhms(Half half) {
            double ohms = meant.map(design -> half.isPrimary() ? design.primaryOhms() : design.secondaryOhms())
                    .filter(WoundAsMeant::known)
                    .orElse(0.0);
            return ohms == 0
                    ? Estimate.exact(0)
                    : Estimate.of(
                            ohms,
                            Influence.rectangular("resistance by the design", 0.2 * ohms, "ohm")
                                    .times(1));
        }

        private Optional<Estimate> inductance() {
            Optional<Estimate> ringing = read.ringHertz()
                    .flatMap(hertz -> read.ringFarads().map(farads -> Inductance.ringing(hertz, farads)));
            return driven(read.open(), warm(Half.PRIMARY_A)).or(() -> ringing);
        }

        private Optional<Estimate> leakage() {
            double ratio = meant.map(design -> (double) design.secondaryTurns() / design.primaryTurns())
                    .orElse(1.0);
            Estimate reflected =
                    warm(Half.SECONDARY_A).plus(warm(Half.SECONDARY_B)).scale(0.25 / (ratio * ratio));
            return driven(read.shorted(), warm(Half.PRIMARY_A).plus(reflected));
        }

        private Optional<Estimate> driven(Optional<WoundReadings.Driven> driven, Estimate ohms) {
            if (driven.isEmpty()
                    || read.senseOhms().isEmpty()
                    || !(driven.get().resistor().value() > 0)) {
                return Optional.empty();
            }
            try {
                Estimate amperes = driven.get().resistor().over(read.senseOhms().get());
                return Optional.of(Inductance.sine(driven.get().winding(), amperes, read.hertz(), ohms));
            } catch (IllegalArgumentException e) {
                return Optional.empty();
            }
        }

        /** By three voltmeters: {@code cos = (both^2 - resistor^2 - winding^2) / (2 resistor winding)} (textbooks). */
        private Optional<Estimate> inPhase() {
            return read.open().filter(open -> open.both().isPresent()).map(open -> {
                Estimate winding = open.winding();
                Estimate resistor = open.resistor();
                Estimate both = open.both().get();
                return both.times(both)
                        .minus(resistor.times(resistor))
                        .minus(winding.times(winding))
                        .over(resistor.times(winding))
                        .scale(0.5);
            });
        }

        private static Estimate knee(Knee knee) {
            double half = Math.max(knee.volts() - knee.lowest(), knee.highest() - knee.volts());
            return Estimate.of(
                    knee.volts(),
                    Influence.normal("place of the knee", Math.max(1e-6, half / 1.96), "V")
                            .times(1));
        }

        private Optional<Estimate> hot() {
            WoundReadings.BothWays cold = read.ohms().get(Half.SECONDARY_A);
            if (cold == null || read.degC().isEmpty() || read.cooling().size() < 3) {
                return Optional.empty();
            }
            try {
                Estimate ohms = cold.forwardVolts().over(cold.forwardAmperes());
                return Optional.of(SwitchOff.degC(ohms, read.degC().get(), SwitchOff.ohms(ohms, read.cooling())));
            } catch (IllegalArgumentException e) {
                return Optional.empty();
            }
        }

        private Map<Half, Measured> windings() {
            Map<Half, Measured> all = new EnumMap<>(Half.class);
            for (Half half : Half.values()) {
                Optional<Estimate> turns = read.oneTurn()
                        .filter(one -> one.value() > 0)
                        .flatMap(one -> volts(half).map(own -> Ratio.turns(own, one)));
                Optional<Estimate> ohms = Optional.ofNullable(ohms20.get(half));
                if (turns.isPresent() || ohms.isPresent()) {
                    all.put(half, new Measured(ohms, turns));
                }
            }
            return all;
        }

        /** Spreads of sound ones as at {@link WoundAsMeant}; wire lengths 10 %, ratios and halves what laying leaves. */
        private void expect(WoundAsMeant design) {
            double ratio = (double) design.secondaryTurns() / design.primaryTurns();
            for (Half half : Half.values()) {
                expect(resistanceOf(half), half.isPrimary() ? design.primaryOhms() : design.secondaryOhms(), 0.1, true);
            }
            expect(FigureName.HALF_A_RATIO, ratio, 0.01, true);
            expect(FigureName.HALF_B_RATIO, ratio, 0.01, true);
            expect(FigureName.PRIMARY_HALVES_DIFFER, 0, 0.5, false);
            expect(FigureName.SECONDARY_HALVES_DIFFER, 0, 0.5, false);
            expect(FigureName.MAGNETISING_INDUCTANCE, design.henries(), 0.25, true);
            expect(FigureName.CORE_LOSS, design.coreWatts(), 0.5, true);
            expect(FigureName.SATURATION_INPUT, design.kneeVolts(), 0.1, true);
        }

        private void expect(FigureName name, double value, double spread, boolean share) {
            if (share && !WoundAsMeant.known(value)) {
                return;
            }
            double half = share ? spread * value : spread;
            expected.add(new Figure(
                    name,
                    Optional.empty(),
                    Estimate.of(
                            value,
                            Influence.rectangular("spread of sound ones", half, name.unit())
                                    .times(1)),
                    "by the design sheet",
                    name.definition()));
        }
    }
}
