package railwitness.logger.reporting.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.reporting.exporting.SessionExport;

/** Printed numbers worked out again from the exported readings, by means and products alone. */
class PrintedNumbersTest {
    @TempDir
    static Path folder;

    private static List<CSVRecord> rows;
    private static String paper;

    @BeforeAll
    static void print() throws Exception {
        Path session = Rehearsed.session(folder.resolve("a.session"), "", 5, Rehearsed.head("2026-080", true));
        Path out = folder.resolve("a.pdf");
        Certificate.of(session, Order.plain(Instant.parse("2026-03-29T08:00:00Z")))
                .writeTo(out);
        paper = PdfText.all(out);
        Path export = folder.resolve("export");
        new SessionExport(session, export).write((share, readings) -> {});
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(export.resolve("readings.csv")))) {
            rows = parser.getRecords();
        }
    }

    private static double mean(String stage, String step, String column) {
        return rows.stream()
                .filter(row -> row.get("stage").equals(stage) && row.get("step").equals(step))
                .map(row -> row.get(column))
                .filter(cell -> !cell.isEmpty())
                .mapToDouble(Double::parseDouble)
                .average()
                .orElseThrow();
    }

    private static double output(String step) {
        return mean("load-sweep", step, "plus.voltage_V") * mean("load-sweep", step, "plus.current_A")
                + Math.abs(mean("load-sweep", step, "minus.voltage_V") * mean("load-sweep", step, "minus.current_A"));
    }

    private static double input(String step) {
        return mean("load-sweep", step, "input.voltage_V") * mean("load-sweep", step, "input.current_A");
    }

    /** The number is printed with its plus-minus behind the step; it is compared at the digits it is printed with. */
    private static void printed(String what, double recomputed, int place, String stageAndStep) {
        String line = paper.lines()
                .filter(one -> one.startsWith(stageAndStep + " ") && one.contains("\u00b1"))
                .skip(place / 10)
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line of " + stageAndStep));
        List<String> numbers = new ArrayList<>();
        for (String word :
                line.substring(stageAndStep.length()).replace('\u2212', '-').split("\\s+")) {
            if (word.matches("-?[0-9]+(\\.[0-9]+)?") || word.equals("\u00b1")) {
                numbers.add(word);
            }
        }
        List<String> values = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i++) {
            boolean after = i > 0 && numbers.get(i - 1).equals("\u00b1");
            if (!numbers.get(i).equals("\u00b1") && !after) {
                values.add(numbers.get(i));
            }
        }
        String shown = values.get(place % 10);
        int decimals = shown.contains(".") ? shown.length() - shown.indexOf('.') - 1 : 0;
        assertThat(Math.abs(Double.parseDouble(shown) - recomputed))
                .as("%s: printed %s, recomputed %s, in '%s'", what, shown, recomputed, line)
                .isLessThanOrEqualTo(0.51 * Math.pow(10, -decimals));
    }

    @Test
    void tenPrintedNumbersComeOutOfTheExport() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            for (String step : List.of("50 %", "100 %")) {
                String at = "load sweep, " + step;
                printed("input voltage", mean("load-sweep", step, "input.voltage_V"), 0, at);
                printed("input current", mean("load-sweep", step, "input.current_A"), 1, at);
                printed("input power", input(step), 2, at);
                printed("output power", output(step), 3, at);
                printed("loss", input(step) - output(step), 4, at);
                printed("efficiency", 100 * output(step) / input(step), 5, at);
            }
        } finally {
            Locale.setDefault(before);
        }
    }
}
