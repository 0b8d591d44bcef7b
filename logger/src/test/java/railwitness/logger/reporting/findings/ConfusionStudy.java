package railwitness.logger.reporting.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;

/**
 * Which cause is named for which fault? Whole sessions of the demo on the virtual bench, from first power to findings:
 * units a little off their sheet, each with one fault, and instruments that differ from session to session.
 *
 * <p>Arguments: sessions for each fault (20), seed (7), one of the sheets (all), faults (all). The command stands in {@code analysis/README.md}.
 */
public final class ConfusionStudy {
    /** Each fault at its usual size; some at another size or place. */
    static final List<String> FAULTS = List.of(
            "none",
            "none@warm",
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
            "lead-resistance=0.06",
            "weak-core=2",
            "dead-parallel-switch",
            "slow-drive",
            "slow-rectifier",
            "leaky-clamp",
            "hot-joint",
            "thermal-runaway",
            "hiccup",
            "hiccup@over-current=18",
            "reversed-half",
            "short-under-load",
            "short-under-load=10");

    /** What of the demo's sheet is known. */
    enum Sheet {
        FULL("full sheet", ".*"),
        TURNS(
                "turns, load, filter",
                "drive|filter|regulated|start_V|nominal_V|lowest_V|highest_V|highest_A|fuse_A|capacitor_rating_V|primary_turns"
                        + "|secondary_turns|name|serial|condition|full_load_A|items|.*_A|rail_.*|imbalance_V|heatsink_degC|touch_V"
                        + "|.*_at_least|rule"),
        RAILS("nominal rails only", TURNS.keys.replace("|primary_turns", "").replace("|secondary_turns", ""));

        private final String words;
        private final String keys;

        Sheet(String words, String keys) {
            this.words = words;
            this.keys = keys;
        }

        /** The demo's sheets, of the design only what is known; requirements, which ask for figures, left out where little is. */
        Sheets of(Sheets demo) {
            if (this == FULL) {
                return demo;
            }
            StringBuilder text = new StringBuilder();
            for (String line : demo.design().text().split("\\R")) {
                if (line.startsWith("[[requirement]]")) {
                    break;
                }
                String key = line.split("[ =]")[0];
                boolean table = line.startsWith("[");
                boolean wanted = table || key.matches(keys) && !key.equals("control_A") && !key.equals("start_V");
                text.append(wanted ? line : "").append('\n');
            }
            String left = text.toString();
            if (this == RAILS) {
                left = left.replaceAll("\\[transformer\\]\\s*", "");
            }
            for (String table : List.of("switches", "rectifier", "filter")) {
                left = left.replaceAll("\\[" + table + "\\][^\\[]*", "");
            }
            return new Sheets(
                    SheetText.of(
                            "design", railwitness.drivers.sheet.Sheet.of("design.toml", left), DesignReader::design),
                    demo.bench(),
                    demo.plan());
        }
    }

    private static final String NONE = "none";
    private static final String NONE_WARM = "none@warm";

    /** What shows only in a unit that has warmed is looked for after half an hour at full load, with the load sweep again. */
    private static final Set<String> OF_HEAT = Set.of("hot-joint", "thermal-runaway");

    private static final String WARMED = """

            [[stage]]
            kind = "hold"
            load_pct = 100
            duration_s = 1800

            [[stage]]
            kind = "load-sweep"
            loads_pct = [25, 50, 75, 100]
            """;

    /**
     * What was said of one fault.
     *
     * @param first how often each code was named first; {@code none}: no cause was named
     * @param among how often the fault was the first cause, or named as not told apart from it
     */
    record Row(Map<String, Integer> first, int among) {}

    private final Sheets whole = Sheets.demo();
    private final Sheets sheets;
    private final Path folder;
    private final Random random;

    ConfusionStudy(Path folder, long seed) {
        this(folder, seed, Sheet.FULL);
    }

    ConfusionStudy(Path folder, long seed, Sheet known) {
        this.sheets = known.of(whole);
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

    private Sheets warmed() {
        String plan = sheets.plan().text() + WARMED;
        return new Sheets(sheets.design(), sheets.bench(), Sheets.plan("plan.toml", plan));
    }

    private Optional<Cause> session(String fault) throws IOException {
        Specimen unit = UnitDraw.of(FixtureMaker.specimen(whole), random);
        List<Fault> faults = code(fault).equals(NONE) ? List.of() : List.of(Fault.of(fault));
        Path file = Files.createTempDirectory(folder, "study").resolve("unit.session");
        boolean warm = fault.equals(NONE_WARM) || OF_HEAT.contains(code(fault));
        Rehearsed.session(file, warm ? warmed() : sheets, unit, faults, random.nextLong());
        Optional<Cause> named =
                SessionFindings.of(file).findings().causes().stream().findFirst();
        Files.delete(file);
        Files.delete(file.getParent());
        return named;
    }

    public static void main(String[] arguments) throws IOException {
        int sessions = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 20;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 7;
        for (Sheet known : Sheet.values()) {
            if (arguments.length < 3 || arguments[2].equals(known.name())) {
                List<String> faults = List.of(arguments).subList(Math.min(3, arguments.length), arguments.length);
                study(known, sessions, seed, faults.isEmpty() ? FAULTS : faults);
            }
        }
    }

    private static void study(Sheet known, int sessions, long seed, List<String> faults) throws IOException {
        Path folder = Files.createTempDirectory("confusion");
        ConfusionStudy study = new ConfusionStudy(folder, seed, known);
        Map<String, Row> rows = new LinkedHashMap<>();
        for (String fault : faults) {
            rows.put(fault, study.row(fault, sessions));
        }
        Files.delete(folder);
        System.out.println(known.words + ": " + sessions + " sessions for each fault, seed " + seed);
        System.out.println();
        print(rows);
        System.out.println();
    }

    private static void print(Map<String, Row> rows) {
        System.out.println("| fault | named first | first or not told apart |");
        System.out.println("|---|---|---|");
        rows.forEach((fault, row) -> System.out.println("| " + fault + " | "
                + row.first().entrySet().stream()
                        .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                        .map(entry -> entry.getKey() + " " + entry.getValue())
                        .collect(Collectors.joining(", "))
                + " | " + row.among() + " |"));
    }
}
