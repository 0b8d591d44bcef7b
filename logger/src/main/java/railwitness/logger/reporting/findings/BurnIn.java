package railwitness.logger.reporting.findings;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.analysis.design.Design;
import railwitness.analysis.design.FigureName;
import railwitness.analysis.soak.HoldDrift;
import railwitness.analysis.soak.PlaceTemperature;
import railwitness.analysis.soak.Soak;
import railwitness.analysis.soak.SoakRecord;
import railwitness.analysis.soak.SoakSeries;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.points.BenchErrors;
import railwitness.logger.recording.points.SessionPoints;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;

/**
 * A hold as it is looked at, while it runs and later: lines over its time, what is foretold, what happened, and some plain
 * sentences. Times are hours since its begin.
 *
 * @param running whether it goes on
 * @param now how far it has come, h
 * @param end where it ends by plan, or ended, h
 * @param temperatures by place, degC
 * @param foretold ways to the final temperatures, from the begin to the end
 * @param hottest what the sheet allows, degC
 * @param drifts of the rails' magnitudes, mV per hour
 * @param efficiency in per cent
 * @param known when the final temperature is known well enough, h
 * @param marks what happened
 * @param sentences for a person
 * @param rows figure, now, at the end, limit
 */
public record BurnIn(
        boolean running,
        double now,
        double end,
        List<Line> temperatures,
        List<Foretold> foretold,
        OptionalDouble hottest,
        List<Line> drifts,
        Optional<Line> efficiency,
        OptionalDouble known,
        List<Mark> marks,
        List<String> sentences,
        List<List<String>> rows) {
    private static final int WINDOWS = 120;
    private static final Set<EventKind> MARKED = EnumSet.of(
            EventKind.TRIP,
            EventKind.STOP,
            EventKind.LIMITING,
            EventKind.DRIFT,
            EventKind.STEADY,
            EventKind.KEY,
            EventKind.RESTING,
            EventKind.RESTED,
            EventKind.CLOCK,
            EventKind.DISK,
            EventKind.CONTINUED,
            EventKind.ALARM);
    private static final int MOST_MARKS = 12;

    /** One line. */
    public record Line(String name, double[] x, double[] y) {}

    /** A fitted way with its band. */
    public record Foretold(String name, double[] x, double[] middle, double[] low, double[] high, String words) {}

    /** Something that happened. */
    public record Mark(double at, String words) {}

    /** Reads a session, finished or running; empty where it holds no hold, or too little of one. */
    public static Optional<BurnIn> of(Path session) {
        try (SessionFile file = SessionFile.open(session)) {
            Optional<Design> design = file.sheet("design")
                    .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(DesignReader::design));
            Optional<BenchSheet> bench = file.sheet("bench")
                    .map(sheet -> Sheet.of(sheet.fileName(), sheet.text()).read(BenchSheet::from));
            SessionPoints maker = new SessionPoints(file, bench, design, new BenchErrors());
            return new SoakReader(file, bench, design, maker.estimates())
                    .record(List.of())
                    .map(longest -> file.state() == SessionState.RUNNING ? latest(longest) : longest)
                    .map(Soak::of)
                    .map(soak -> of(soak, file, design));
        }
    }

    /** Of a session that runs, the hold under way is looked at; of one that is over, the longest. */
    private static SoakRecord latest(SoakRecord longest) {
        return longest.others().stream()
                .filter(other -> other.fromSeconds() > longest.fromSeconds())
                .max(java.util.Comparator.comparingDouble(SoakRecord::fromSeconds))
                .orElse(longest);
    }

    private static BurnIn of(Soak soak, SessionFile file, Optional<Design> design) {
        double from = soak.record().fromSeconds();
        double now = (soak.record().toSeconds() - from) / 3600;
        double end = file.state() == SessionState.RUNNING
                ? Math.max(now, planned(file, soak.record().name()))
                : now;
        List<Line> temperatures = new ArrayList<>();
        soak.record().temperatures().forEach((place, series) -> temperatures.add(line(named(place), series, soak)));
        soak.record().ambient().ifPresent(room -> temperatures.add(line("room", room, soak)));
        List<Foretold> foretold = soak.temperatures().stream()
                .map(place -> foretold(place, from, end))
                .toList();
        OptionalDouble known = soak.temperatures().stream()
                .findFirst()
                .flatMap(place -> place.fit().knownWithin(SoakText.WELL_ENOUGH_KELVIN))
                .map(at -> OptionalDouble.of((at - from) / 3600))
                .orElse(OptionalDouble.empty());
        OptionalDouble hottest =
                design.map(sheet -> sheet.limits().heatsinkDegC()).orElse(OptionalDouble.empty());
        return new BurnIn(
                file.state() == SessionState.RUNNING,
                now,
                end,
                temperatures,
                foretold,
                hottest,
                drifts(soak),
                Soak.efficiency(soak.record()).map(share -> efficiency(share, soak)),
                known,
                marks(file.events(), soak),
                sentences(soak, hottest, known, now, file.state() == SessionState.RUNNING),
                rows(soak, design));
    }

    /** Whether the final temperature is known to half a kelvin: then nothing is gained by waiting for it. */
    public boolean knownWellEnough() {
        return known.isPresent() && known.getAsDouble() <= now + 1e-9;
    }

    private static double planned(SessionFile file, String hold) {
        return file.sheet("plan")
                .map(sheet -> Sheet.of(sheet.fileName(), sheet.text())
                        .read(railwitness.logger.recording.sheet.PlanReader::plan))
                .flatMap(plan -> Optional.ofNullable(plan.holds().get(hold)))
                .map(railwitness.logger.recording.plan.Hold::duration)
                .map(duration -> duration.toSeconds() / 3600.0)
                .orElse(0.0);
    }

    private static Line line(String name, SoakSeries series, Soak soak) {
        return clean(
                name, soak.record().seconds(), series.values(), soak.record().fromSeconds(), 1);
    }

    private static Line clean(String name, double[] seconds, double[] values, double from, double factor) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            if (Double.isFinite(values[i])) {
                points.add(new double[] {(seconds[i] - from) / 3600, values[i] * factor});
            }
        }
        return new Line(
                name,
                points.stream().mapToDouble(point -> point[0]).toArray(),
                points.stream().mapToDouble(point -> point[1]).toArray());
    }

    private static Line efficiency(double[] share, Soak soak) {
        double[] late = share.clone();
        for (int i = 0; i < late.length / 50; i++) {
            late[i] = Double.NaN;
        }
        return clean("efficiency", soak.record().seconds(), late, soak.record().fromSeconds(), 100);
    }

    private static Foretold foretold(PlaceTemperature place, double from, double end) {
        double[] x = new double[WINDOWS];
        double[] middle = new double[WINDOWS];
        double[] low = new double[WINDOWS];
        double[] high = new double[WINDOWS];
        for (int i = 0; i < WINDOWS; i++) {
            x[i] = end * i / (WINDOWS - 1);
            Estimate at = place.fit().at(from + x[i] * 3600);
            double u = at.coverage(0.95).expanded();
            middle[i] = at.value();
            low[i] = at.value() - u;
            high[i] = at.value() + u;
        }
        return new Foretold(place.place(), x, middle, low, high, shown(place.end(), "\u00b0C"));
    }

    /** Slope over a tenth of what is there, wherever enough was read. */
    private static List<Line> drifts(Soak soak) {
        List<Line> lines = new ArrayList<>();
        double from = soak.record().fromSeconds();
        for (Map.Entry<String, SoakSeries> rail : soak.record().rails().entrySet()) {
            double[] y = rail.getValue().values();
            double[] t = soak.record().seconds();
            int window = Math.max(8, y.length / 10);
            List<double[]> points = new ArrayList<>();
            for (int end = window + y.length / 50; end <= y.length; end += Math.max(1, y.length / WINDOWS)) {
                slope(t, y, end - window, end)
                        .ifPresent(perHour ->
                                points.add(new double[] {(t[(int) perHour[1]] - from) / 3600, 1000 * perHour[0]}));
            }
            lines.add(new Line(
                    sign(rail.getKey()) + " rail",
                    points.stream().mapToDouble(point -> point[0]).toArray(),
                    points.stream().mapToDouble(point -> point[1]).toArray()));
        }
        return lines;
    }

    private static Optional<double[]> slope(double[] t, double[] y, int from, int to) {
        double n = 0;
        double st = 0;
        double sy = 0;
        double stt = 0;
        double sty = 0;
        for (int i = from; i < to; i++) {
            if (Double.isFinite(y[i])) {
                double hours = (t[i] - t[from]) / 3600;
                n++;
                st += hours;
                sy += Math.abs(y[i]);
                stt += hours * hours;
                sty += hours * Math.abs(y[i]);
            }
        }
        double spread = n * stt - st * st;
        return n < 6 || !(spread > 0)
                ? Optional.empty()
                : Optional.of(new double[] {(n * sty - st * sy) / spread, to - 1});
    }

    private static List<Mark> marks(List<EventEntry> events, Soak soak) {
        double from = soak.record().fromSeconds();
        List<Mark> marks = new ArrayList<>(List.of(new Mark(0, "on")));
        events.stream()
                .filter(event -> MARKED.contains(event.event().kind()))
                .filter(event -> event.nanos() / 1e9 >= from
                        && event.nanos() / 1e9 <= soak.record().toSeconds() + 60)
                .limit(MOST_MARKS)
                .forEach(event -> marks.add(new Mark((event.nanos() / 1e9 - from) / 3600, event.what())));
        return marks;
    }

    /** As it is read on a screen: a true minus sign, and the sign for plus or minus. */
    private static String shown(Estimate value, String unit) {
        return SoakText.withU(value, unit).trim().replace("+-", "\u00b1").replace("-", "\u2212");
    }

    private static List<String> sentences(
            Soak soak, OptionalDouble hottest, OptionalDouble known, double now, boolean running) {
        List<String> words = new ArrayList<>();
        words.add("Held at " + soak.record().name() + " for "
                + SoakText.duration(soak.record().toSeconds() - soak.record().fromSeconds())
                + (running ? " so far." : "."));
        soak.temperatures().stream().findFirst().ifPresent(place -> {
            String limit = hottest.isPresent()
                    ? String.format(
                            Locale.ROOT,
                            ", %.0f K below the limit",
                            hottest.getAsDouble() - place.end().value())
                    : "";
            words.add(String.format(
                            Locale.ROOT,
                            running ? "The %s is at %.1f \u00b0C and " : "The %s ended at %.1f \u00b0C and ",
                            named(place.place()),
                            place.last().value())
                    + (place.reached() ? "has reached its end near " : running ? "will end near " : "tended to ")
                    + String.format(Locale.ROOT, "%.0f \u00b0C", place.end().value())
                    + limit + ".");
            place.rise().ifPresent(rise -> words.add("That is " + shown(rise, "K") + " above the room."));
        });
        if (known.isPresent()) {
            words.add(knownWords(3600 * known.getAsDouble(), known.getAsDouble() <= now + 1e-9, running));
        }
        soak.drifts().stream()
                .filter(drift -> drift.name().equals("voltage"))
                .forEach(drift -> words.add("The " + sign(drift.rail().orElse("")) + " rail "
                        + (running ? "drifts by " : "drifted by ") + shown(drift.perHour(), "% per hour") + "."));
        return words;
    }

    private static String knownWords(double seconds, boolean reached, boolean running) {
        if (reached) {
            return "The shape of its rise gives the final temperature to \u00b10.5 K, the thermometer's own accuracy"
                    + " not counted" + (running ? ": the hold may be ended." : ".");
        }
        String after = SoakText.duration(seconds);
        return running
                ? "After " + after
                        + " it will be known to \u00b10.5 K, the thermometer's own accuracy not counted, with"
                        + " no need to wait for the end."
                : "After " + after + " it would have been known to \u00b10.5 K.";
    }

    private static String named(String place) {
        return Soak.isHeatSink(place) ? "heat sink" : place;
    }

    private static String sign(String rail) {
        return switch (rail) {
            case "plus" -> "+";
            case "minus" -> "\u2212";
            default -> rail;
        };
    }

    private static List<List<String>> rows(Soak soak, Optional<Design> design) {
        List<List<String>> rows = new ArrayList<>();
        for (PlaceTemperature place : soak.temperatures()) {
            boolean sink = Soak.isHeatSink(place.place());
            rows.add(List.of(
                    named(place.place()) + ", \u00b0C",
                    String.format(Locale.ROOT, "%.1f", place.last().value()),
                    shown(place.end(), ""),
                    sink ? limit(design, FigureName.FINAL_HEAT_SINK_TEMPERATURE) : ""));
            place.rise()
                    .ifPresent(rise -> rows.add(List.of(
                            "above room, K",
                            "",
                            shown(rise, ""),
                            sink ? limit(design, FigureName.FINAL_HEAT_SINK_RISE) : "")));
        }
        for (HoldDrift drift : soak.drifts()) {
            if (drift.name().equals("voltage")) {
                rows.add(List.of(
                        "drift " + sign(drift.rail().orElse("")) + ", %/h",
                        shown(drift.perHour(), ""),
                        "",
                        limit(design, FigureName.DRIFT)));
            }
        }
        return rows;
    }

    private static String limit(Optional<Design> design, FigureName name) {
        return design.stream()
                .flatMap(sheet -> sheet.requirements().stream())
                .filter(asked -> asked.figure() == name && asked.atMost().isPresent())
                .map(asked -> (name == FigureName.DRIFT ? "\u00b1 " : "\u2264 ")
                        + plain(asked.atMost().getAsDouble()))
                .findFirst()
                .orElse("");
    }

    /** As a person wrote it: 45, 0.1. */
    private static String plain(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
