package railwitness.logger.reporting.findings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import railwitness.analysis.supply.Figure;
import railwitness.analysis.supply.Figures;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.RippleMeans;
import railwitness.drivers.converter.Specimen;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;

/**
 * Does the stated 95 % interval hold what it says? Sessions of the demo's plan on the physics of the virtual bench, worked
 * out as a session's findings are, but without a file: units a little off their sheet; each instrument's gain and offset
 * drawn once a session from exactly its stated accuracy, shunts from their tolerance, noise for each reading. The truth
 * of a figure is what the same points give without errors; of an output resistance, which stands for every load of its range,
 * what a sweep at other loads of that range gives.
 *
 * <p>Run it: {@code mvn -q test-compile} and then {@code mvn -q -pl logger exec...}; the command stands in
 * {@code analysis/README.md}. Arguments: sessions (10000), seed (25000).
 */
public final class CoverageStudy {
    private static final int SESSIONS_PER_UNIT = 100;

    private final Sheets sheets = Sheets.demo();
    private final Map<String, Integer> inside = new LinkedHashMap<>();
    private final Map<String, Integer> seen = new LinkedHashMap<>();

    /** Per cent of the sessions in which each figure's interval held the truth. */
    Map<String, Double> run(int sessions, long seed) {
        Random random = new Random(seed);
        Specimen sheet = FixtureMaker.specimen(sheets);
        for (int session = 0; session < sessions; ) {
            StudyUnit unit = new StudyUnit(sheets, UnitDraw.of(sheet, random));
            Figures truth = figures(unit.points(new StudyBench(sheets, random, true)));
            for (int k = 0; k < SESSIONS_PER_UNIT && session < sessions; k++, session++) {
                Figures read = figures(unit.points(new StudyBench(sheets, random, false)));
                StudyUnit other = unit.atOtherLoads(sheets, random);
                hold(read, truth, figures(other.points(new StudyBench(sheets, random, true))));
            }
        }
        Map<String, Double> shares = new LinkedHashMap<>();
        seen.forEach((name, count) -> shares.put(name, 100.0 * inside.getOrDefault(name, 0) / count));
        return shares;
    }

    private Figures figures(List<OperatingPoint> points) {
        return Figures.of(points, Optional.of(sheets.design().content()), RippleMeans.unknown());
    }

    private void hold(Figures figures, Figures truth, Figures atOtherLoads) {
        for (Figure figure : figures.found()) {
            Figures true_ = figure.name().word().startsWith("output resistance") ? atOtherLoads : truth;
            double value = true_.find(figure.name(), figure.rail())
                    .orElseThrow()
                    .value()
                    .value();
            double expanded = figure.value().coverage(0.95).expanded();
            seen.merge(figure.label(), 1, Integer::sum);
            if (Math.abs(figure.value().value() - value) <= expanded) {
                inside.merge(figure.label(), 1, Integer::sum);
            }
        }
    }

    public static void main(String[] arguments) {
        int sessions = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 10_000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 25_000;
        System.out.println(sessions + " sessions, seed " + seed);
        System.out.println();
        System.out.println("| figure | truth within the stated 95 % interval, % of sessions |");
        System.out.println("|---|---|");
        new CoverageStudy()
                .run(sessions, seed)
                .forEach((name, share) -> System.out.printf(Locale.ROOT, "| %s | %.1f |%n", name, share));
    }
}
