package railwitness.logger.reporting.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.analysis.soak.PlaceTemperature;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.soak.SoakFigures;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Rounding;

/** What a hold showed, in lines of plain text. */
public final class SoakText {
    /** A final temperature known to this half-width is known well enough to stop (our own choice), K. */
    public static final double WELL_ENOUGH_KELVIN = 0.5;

    private SoakText() {}

    /** The lines; a blank one ends those of each hold. */
    static List<String> lines(Soak soak, List<OperatingPoint> points) {
        List<String> lines = new ArrayList<>(lines(soak, !soak.others().isEmpty()));
        for (Soak other : soak.others()) {
            List<String> these = lines(other, true);
            these.remove(these.size() - 1);
            SoakFigures.of(other, points).found().forEach(figure -> these.add(figure.label() + ": " + shown(figure)));
            these.add("");
            lines.addAll(these);
        }
        return lines;
    }

    private static String shown(Figure figure) {
        ShownUnit unit = ShownUnit.of(figure.name());
        Estimate value = figure.value().scale(unit.factor());
        return (value.u() > 0
                        ? withU(value, unit.word())
                        : Rounding.of(value.value(), 0).valueText() + " " + unit.word())
                .trim();
    }

    private static List<String> lines(Soak soak, boolean named) {
        List<String> lines = new ArrayList<>();
        double from = soak.record().fromSeconds();
        String name = soak.record().name();
        lines.add("held " + (named ? "at " + name + " " : "") + "for "
                + duration(soak.record().toSeconds() - from) + ", from " + duration(from)
                + " after the begin of the session; " + counts(soak));
        soak.temperatures().forEach(place -> lines.add(place(place, from)));
        for (var rule : soak.stability()) {
            lines.add("steady by " + rule.rule() + ": " + met(rule.metAtSeconds(), from));
        }
        lines.add("");
        return lines;
    }

    private static String counts(Soak soak) {
        int restarts = soak.record().restarts();
        return (soak.record().cycleSeconds().isPresent()
                        ? ""
                        : times(soak.record().excursions(), "excursion") + ", ")
                + times(soak.record().gaps(), "gap") + ", " + times(restarts, "restart");
    }

    private static String times(int count, String what) {
        return (count == 0 ? "no" : Integer.toString(count)) + " " + what + (count == 1 ? "" : "s");
    }

    private static String place(PlaceTemperature place, double from) {
        StringBuilder words = new StringBuilder(place.place())
                .append(": ended at ")
                .append(String.format(Locale.ROOT, "%.1f degC", place.last().value()))
                .append(place.reached() ? ", its final temperature is " : ", tends to ")
                .append(withU(place.end(), "degC"));
        place.rise()
                .ifPresent(rise -> words.append(", ").append(withU(rise, "K")).append(" above the room"));
        place.timeConstantSeconds()
                .ifPresent(tau -> words.append("; time constant ").append(withU(tau.scale(1 / 60.0), "min")));
        place.secondsToFinal()
                .ifPresent(until -> words.append("; within 1 K of it after ").append(duration(until.value())));
        Optional<Double> known = place.fit().knownWithin(WELL_ENOUGH_KELVIN);
        if (!place.reached()) {
            known.ifPresent(at -> words.append("; known to 0.5 K ")
                    .append(duration(at - from))
                    .append(" after the begin"));
        }
        return words.toString();
    }

    private static String met(OptionalDouble at, double from) {
        return at.isPresent() ? "after " + duration(at.getAsDouble() - from) : "not met";
    }

    /** Value and U of 95 %, rounded alike; the value alone where its accuracy is not stated. */
    public static String withU(Estimate value, String unit) {
        String number = value.known() && value.u() > 0
                ? Rounding.expanded(value, value.coverage(0.95)).toString()
                : String.format(Locale.ROOT, "%.4g", value.value());
        return number + " " + unit;
    }

    /** Such as 45 s, 12 min, 2 h 07 min, 3 d 00 h. */
    public static String duration(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 120) {
            return whole + " s";
        }
        if (whole < 3600) {
            return Math.round(seconds / 60) + " min";
        }
        long minutes = Math.round(seconds / 60);
        return minutes < 48 * 60
                ? String.format(Locale.ROOT, "%d h %02d min", minutes / 60, minutes % 60)
                : String.format(Locale.ROOT, "%d d %02d h", minutes / 1440, minutes % 1440 / 60);
    }
}
