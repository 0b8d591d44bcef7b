package railwitness.logger.recording.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;
import railwitness.drivers.reading.Waveform;

/** Every cell of every table is altered once, by SQL as a forger would, and the verification must see each. */
class VerificationTest {
    @TempDir
    Path folder;

    /** A session that has rows in every table: it was not finished, and a copy of one that was. */
    private Path interrupted() throws SQLException {
        Path file = folder.resolve("whole.session");
        Channel plus = Channel.of("plus.voltage");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            new Recording(5).write(writer, 400, 250_000_000L);
            writer.waveform(100_300_000_000L, new Waveform(plus, -0.5, 1e-6, new double[] {1, 2, 3}));
            writer.step(new StepEntry(
                    "load-sweep",
                    "50 %",
                    5_000_000_000L,
                    java.util.Optional.of(TimeSpan.ofSeconds(6, 7)),
                    true,
                    StepOutcome.MEASURED,
                    "",
                    java.util.OptionalDouble.of(12.6),
                    new java.util.TreeMap<>(java.util.Map.of("plus", 2.5))));
            writer.wall(100_400_000_000L, Heads.plain().startedWall().plusSeconds(3700));
            writer.reading(new Overload(plus, 100_500_000_000L, 100_500_000_001L));
            writer.reading(new Missing(plus, "unplugged", 100_600_000_000L, 100_600_000_001L));
            writer.reading(new Measured(plus, 35.5, 100_700_000_000L, 100_700_000_001L));
        }
        return file;
    }

    @Test
    void progressRisesToTheWholeAndCanEndTheWork() throws Exception {
        Path file = interrupted();
        List<Double> shares = new ArrayList<>();
        Verification.of(file, shares::add);
        assertThat(shares).hasSizeGreaterThan(20).isSorted().last().satisfies(last -> assertThat(last)
                .isBetween(0.9, 1.0));
        assertThatThrownBy(() -> Verification.of(file, share -> {
                    throw new IllegalStateException("enough");
                }))
                .hasMessage("enough");
        assertThat(Verification.of(file).isIntact()).isTrue();
    }

    @Test
    void anyAlteredCellIsFound() throws Exception {
        Path file = interrupted();
        fold(file);
        assertThat(Verification.of(file).faults()).isEmpty();
        List<String> unseen = new ArrayList<>();
        int altered = 0;
        for (String[] cell : cells(file)) {
            Path forged = Files.copy(file, folder.resolve("forged.session"), StandardCopyOption.REPLACE_EXISTING);
            if (alter(forged, cell[0], cell[1], cell[2])) {
                altered++;
                if (found(forged)) {
                    continue;
                }
                unseen.add(String.join(" ", cell));
            }
        }
        assertThat(unseen).isEmpty();
        assertThat(altered).isGreaterThan(100);
    }

    private static boolean found(Path file) {
        try {
            return !Verification.of(file).isIntact();
        } catch (StoreException | IllegalArgumentException | java.time.DateTimeException e) {
            return true;
        }
    }

    /** First, last and a middle row of each table, each column. */
    private static List<String[]> cells(Path file) throws SQLException {
        List<String[]> cells = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String table : strings(statement, "SELECT name FROM sqlite_master WHERE type = 'table'")) {
                List<String> columns = strings(statement, "SELECT name FROM pragma_table_info('" + table + "')");
                int rows = Integer.parseInt(
                        strings(statement, "SELECT count(*) FROM " + table).get(0));
                for (int row : new java.util.TreeSet<>(List.of(0, rows / 2, Math.max(0, rows - 1)))) {
                    columns.forEach(column -> cells.add(new String[] {table, column, String.valueOf(row)}));
                }
                if (!table.equals("ending")) {
                    assertThat(rows).as(table).isPositive();
                }
            }
        }
        return cells;
    }

    private static List<String> strings(Statement statement, String sql) throws SQLException {
        List<String> strings = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                strings.add(rows.getString(1));
            }
        }
        return strings;
    }

    /** Changes one cell as little as its kind allows; false when the table has no such row. */
    private static boolean alter(Path file, String table, String column, String row) throws SQLException {
        String key = table.equals("block") ? "first_seq" : table.equals("link") ? "last_seq" : "seq";
        String order = table.equals("summary") ? "channel, span_s, start_s" : key;
        String where = table.equals("summary")
                ? "(channel, span_s, start_s) = (SELECT channel, span_s, start_s FROM summary ORDER BY " + order
                        + " LIMIT 1 OFFSET " + row + ")"
                : key + " = (SELECT " + key + " FROM " + table + " ORDER BY " + order + " LIMIT 1 OFFSET " + row + ")";
        String little = "CASE typeof(" + column + ") WHEN 'integer' THEN " + column + " + 100000 WHEN 'real' THEN "
                + column
                + " * (1 + 3e-16) WHEN 'null' THEN 1 WHEN 'text' THEN " + column
                + " || ' ' ELSE CAST(substr(" + column + ", 1, length(" + column + ") - 1) || x'ee' AS BLOB) END";
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            return statement.executeUpdate("UPDATE " + table + " SET " + column + " = " + little + " WHERE " + where)
                    > 0;
        }
    }

    /** Makes one plain file of an interrupted session, so that forging starts from a copy of it. */
    private static void fold(Path file) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = DELETE");
        }
    }

    @Test
    void anEndingIsPartOfTheChain() throws Exception {
        Path file = folder.resolve("ended.session");
        Recording.complete(file, 9);
        for (String column : List.of("seq", "at_ns", "state")) {
            Path forged = Files.copy(file, folder.resolve("forged.session"), StandardCopyOption.REPLACE_EXISTING);
            assertThat(alter(forged, "ending", column, "0")).isTrue();
            assertThat(found(forged)).as(column).isTrue();
        }
    }

    @Test
    void aForgedSheetIsNamed() throws Exception {
        Path file = folder.resolve("sheet.session");
        Recording.complete(file, 9);
        sql(file, "UPDATE sheet SET text = 'name = \"Heron\"' WHERE kind = 'design'");
        assertThat(Verification.of(file).words()).contains("sheet design (kingfisher.toml)");
    }

    @Test
    void theSecondOfAForgedReadingIsNamed() throws Exception {
        Path file = folder.resolve("second.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            new Recording(5).write(writer, 100, 250_000_000L);
        }
        sql(file, "UPDATE reading SET value = value + 0.0001 WHERE replied_ns BETWEEN 12000000000 AND 12999999999");
        assertThat(Verification.of(file).firstSecond()).hasValue(12);
    }

    @Test
    void deletedAndAddedRowsAreFound() throws Exception {
        List<String> forgeries = List.of(
                "DELETE FROM event WHERE seq = (SELECT min(seq) FROM event)",
                "DELETE FROM ending",
                "DELETE FROM block WHERE first_seq = (SELECT max(first_seq) FROM block)",
                "DELETE FROM summary WHERE start_s = 4",
                "DELETE FROM link WHERE last_seq = (SELECT max(last_seq) FROM link)",
                "INSERT INTO note (at_ns, author, text) VALUES (1, '', 'added')",
                "INSERT INTO reading (channel, requested_ns, replied_ns, value) VALUES (6, 1, 2, 3.0)",
                "INSERT INTO block (channel, readings, from_ns, to_ns, packed) VALUES (99, 1, 1, 1, x'00')",
                "CREATE TABLE extra (a)",
                "CREATE TRIGGER t AFTER INSERT ON note BEGIN DELETE FROM note; END");
        Path whole = folder.resolve("whole.session");
        Recording.complete(whole, 9);
        for (String forgery : forgeries) {
            Path file = Files.copy(whole, folder.resolve("forged.session"), StandardCopyOption.REPLACE_EXISTING);
            sql(file, forgery);
            assertThat(Verification.of(file).isIntact()).as(forgery).isFalse();
        }
    }

    @Test
    void noFlippedByteOfTheFileGoesUnseen() throws Exception {
        Path file = folder.resolve("bytes.session");
        Recording.complete(file, 9);
        byte[] bytes = Files.readAllBytes(file);
        String before = dump(file);
        Random random = new Random(77);
        for (int i = 0; i < 60; i++) {
            byte[] flipped = bytes.clone();
            int at = 100 + random.nextInt(bytes.length - 100);
            flipped[at] ^= (byte) (1 << random.nextInt(8));
            Path forged = Files.write(folder.resolve("flipped.session"), flipped);
            assertThat(found(forged) || dump(forged).equals(before))
                    .as("byte " + at)
                    .isTrue();
        }
    }

    /** Everything the tables hold, as text: a flip in unused room of the file changes nothing of it. */
    private static String dump(Path file) throws SQLException {
        StringBuilder text = new StringBuilder();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            for (String table : strings(statement, "SELECT name FROM sqlite_master WHERE type = 'table'")) {
                String columns = String.join(
                        "||'|'||",
                        strings(statement, "SELECT 'quote(' || name || ')' FROM pragma_table_info('" + table + "')"));
                strings(statement, "SELECT " + columns + " FROM " + table).forEach(text::append);
            }
        }
        return text.toString();
    }

    @Test
    void packingChangesNoDigest() {
        Path file = folder.resolve("packing.session");
        try (SessionWriter writer = SessionWriter.create(file, Heads.plain())) {
            Recording recording = new Recording(3);
            recording.write(writer, 1000, 250_000_000L);
            writer.commit();
            try (SessionFile session = SessionFile.open(file)) {
                String before = session.seal();
                for (int i = 0; i < 20; i++) {
                    writer.commit();
                }
                assertThat(session.seal()).isEqualTo(before);
                assertThat(Verification.of(file).words()).startsWith("intact").contains(before);
            }
        }
    }

    private static void sql(Path file, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
