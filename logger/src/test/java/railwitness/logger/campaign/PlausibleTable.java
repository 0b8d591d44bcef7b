package railwitness.logger.campaign;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import railwitness.logger.recording.importing.ImportException;
import railwitness.logger.recording.importing.TableForm;
import railwitness.logger.recording.importing.TableSession;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * A table of the demo's unit that is fit, four rows to a point. Source of the readings: {@code simulate.py
 * demo/design.toml simulated-unit-11.csv --unit 11}, ngspice 39; standby is added.
 */
final class PlausibleTable {
    private static final int ROWS = 4;
    private static final String SOURCE = "/railwitness/logger/reference/simulated-unit-11.csv";
    private static final String STANDBY = "0,standby,standby,13.8,0.002,0.001,0,-0.001,0,0,0";
    private static final String COMMA_OUTSIDE_QUOTES = ",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)";
    /** Columns of the input and of the rails, without ripple. */
    private static final int FIRST_READING = 3;

    private static final int READINGS = 6;

    private PlausibleTable() {}

    /** @param what was done, in words */
    record Spoilt(String what, String text) {}

    static String text() {
        return String.join("\n", rows()) + "\n";
    }

    private static List<String> rows() {
        List<String> rows = new ArrayList<>();
        try (InputStream in = PlausibleTable.class.getResourceAsStream(SOURCE)) {
            List<String> source = new ArrayList<>(new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList());
            rows.add(source.remove(0));
            source.add(0, STANDBY);
            for (String row : source) {
                for (int k = 0; k < ROWS; k++) {
                    rows.add(again(row, rows.size(), k));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }

    /** The row a little later, its readings a little off. */
    private static String again(String row, int seconds, int k) {
        String[] cells = row.split(COMMA_OUTSIDE_QUOTES);
        cells[0] = String.valueOf(seconds);
        for (int at = FIRST_READING; at < cells.length; at++) {
            cells[at] = String.format(Locale.ROOT, "%.6f", Double.parseDouble(cells[at]) * (1 + 2e-6 * (k - 1)));
        }
        return String.join(",", cells);
    }

    /** One reading of the input or of a rail that no unit has, in all rows of its point, or is of no state of the others. */
    static Spoilt spoilt(Random random) {
        List<String> rows = rows();
        int point = 1 + ROWS * (1 + random.nextInt(rows.size() / ROWS - 1));
        int from = random.nextBoolean() ? point : point + random.nextInt(ROWS);
        int to = from == point && random.nextBoolean() ? point + ROWS : from + 1;
        String column;
        int at;
        double before;
        do {
            at = FIRST_READING + random.nextInt(READINGS);
            column = rows.get(0).split(",")[at];
            before = Double.parseDouble(rows.get(from).split(COMMA_OUTSIDE_QUOTES)[at]);
        } while (Math.abs(before) < 0.1);
        double[] sizes = {-10, 100, 1e3, 1e6, 1e300, -1, 10, 0, 0.01};
        double by = sizes[random.nextInt(to - from == 1 ? sizes.length : 5)];
        for (int row = from; row < to; row++) {
            String[] cells = rows.get(row).split(COMMA_OUTSIDE_QUOTES);
            cells[at] = String.valueOf(Double.parseDouble(cells[at]) * by);
            rows.set(row, String.join(",", cells));
        }
        String step = rows.get(from).split(COMMA_OUTSIDE_QUOTES)[1] + " "
                + rows.get(from).split(COMMA_OUTSIDE_QUOTES)[2];
        return new Spoilt(
                column + " by " + by + " in " + (to - from) + " rows of " + step, String.join("\n", rows) + "\n");
    }

    /** What the table shows with the demo's sheets; empty where it is refused. */
    static Optional<SessionFindings> findings(Path table) {
        Sheets demo = Sheets.demo();
        Path session = table.resolveSibling(table.getFileName() + ".session");
        try {
            Files.deleteIfExists(session);
            new TableSession(table, TableForm.USUAL, Optional.of(demo.design()), Optional.of(demo.bench()))
                    .write(
                            session,
                            start -> new SessionHead(
                                    "0412", Instant.EPOCH, ZoneOffset.UTC, false, "test", "", "Saloon", "0412", ""),
                            share -> {});
            try (SessionFile file = SessionFile.open(session)) {
                return Optional.of(SessionFindings.judged(file));
            }
        } catch (ImportException refused) {
            return Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            try {
                Files.deleteIfExists(session);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
