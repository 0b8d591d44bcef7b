package railwitness.logger.reporting.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.analysis.cause.Cause;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;

/**
 * Which cause is named for which fault? Whole sessions of the demo on the virtual bench, from first power to findings:
 * units a little off their sheet, each with one fault, and instruments that differ from session to session.
 *
 * <p>Arguments: sessions for each fault (20), seed (7). The command stands in {@code analysis/README.md}.
 */
public final class ConfusionStudy {
    /** Each fault at its usual size; some at another size or place. */
    static final List<String> FAULTS = List.of(
            "none",
            "shorted-turn",
            "shorted-turn=1.5",
            "wrong-turns",
            "wrong-turns=-1",
            "wrong-turns@half-2",
            "weak-half",
            "dead-drive",
            "dead-rectifier",
            "dead-rectifier@minus",
            "shorted-rectifier",
            "shorted-switch",
            "leaky-switch",
            "tired-capacitor",
            "tired-capacitor@minus=3",
            "lead-resistance",
            "weak-core",
            "dead-parallel-switch",
            "slow-drive",
            "slow-rectifier",
            "leaky-clamp",
            "hot-joint",
            "thermal-runaway",
            "hiccup",
            "reversed-half",
            "short-under-load");

    private static final String NONE = "none";

    /**
     * What was said of one fault.
     *
     * @param first how often each code was named first; {@code none}: no cause was named
     * @param among how often the fault was the first cause, or named as not told apart from it
     */
    record Row(Map<String, Integer> first, int among) {}

    private final Sheets sheets = Sheets.demo();
    private final Path folder;
    private final Random random;

    ConfusionStudy(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
    }

    Row row(String fault, int sessions) throws IOException {
        Map<String, Integer> first = new LinkedHashMap<>();
        int among = 0;
        for (int session = 0; session < sessions; session++) {
            Optional<Cause> named = session(fault);
            first.merge(named.map(cause -> cause.code().word()).orElse(NONE), 1, Integer::sum);
            among += said(named).contains(code(fault)) ? 1 : 0;
        }
        return new Row(first, among);
    }

    private static Set<String> said(Optional<Cause> named) {
        Set<String> said = new LinkedHashSet<>();
        said.add(named.map(cause -> cause.code().word()).orElse(NONE));
        named.ifPresent(cause -> cause.alike().forEach(code -> said.add(code.word())));
        return said;
    }

    static String code(String fault) {
        return fault.split("[@=]")[0];
    }

    private Optional<Cause> session(String fault) throws IOException {
        Specimen unit = UnitDraw.of(FixtureMaker.specimen(sheets), random);
        List<Fault> faults = fault.equals(NONE) ? List.of() : List.of(Fault.of(fault));
        Path file = Files.createTempDirectory(folder, "study").resolve("unit.session");
        Rehearsed.session(file, sheets, unit, faults, random.nextLong());
        Optional<Cause> named =
                SessionFindings.of(file).findings().causes().stream().findFirst();
        Files.delete(file);
        Files.delete(file.getParent());
        return named;
    }

    public static void main(String[] arguments) throws IOException {
        int sessions = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 7;
        Path folder = Files.createTempDirectory("confusion");
        ConfusionStudy study = new ConfusionStudy(folder, seed);
        Map<String, Row> rows = new LinkedHashMap<>();
        for (String fault : FAULTS) {
            rows.put(fault, study.row(fault, sessions));
        }
        Files.delete(folder);
        System.out.println(sessions + " sessions for each fault, seed " + seed);
        System.out.println();
        print(rows);
    }

    private static void print(Map<String, Row> rows) {
        List<String> codes =
                FAULTS.stream().map(ConfusionStudy::code).distinct().collect(Collectors.toList());
        List<String> head = new ArrayList<>(codes);
        System.out.println("| fault \\ named first | " + String.join(" | ", head) + " | first or not told apart |");
        System.out.println("|---|" + "---|".repeat(codes.size() + 1));
        rows.forEach((fault, row) -> System.out.println("| " + fault + " | "
                + codes.stream()
                        .map(code ->
                                row.first().containsKey(code) ? "" + row.first().get(code) : "")
                        .collect(Collectors.joining(" | "))
                + " | " + row.among() + " |"));
    }
}
