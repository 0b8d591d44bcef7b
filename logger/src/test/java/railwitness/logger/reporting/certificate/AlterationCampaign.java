package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.recording.store.Verification;

/**
 * Alters one random cell of a session at a time, over all tables, and sees whether the verification finds it. From the
 * command line: how many, which seed; prints a table.
 */
public final class AlterationCampaign {
    private final Path folder;
    private final List<Path> whole;
    private final Random random;
    private final Map<String, int[]> byTable = new TreeMap<>();
    private final List<String> unseen = new ArrayList<>();

    AlterationCampaign(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
        this.whole = List.of(
                SmallSession.write(folder.resolve("ended.session"), true),
                plain(SmallSession.write(folder.resolve("interrupted.session"), false)));
    }

    /** Makes one file of an interrupted session and its log, so that a copy is whole. */
    private static Path plain(Path file) {
        try (Connection connection = open(file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = DELETE");
            return file;
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    public static void main(String[] arguments) throws Exception {
        int count = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        AlterationCampaign campaign = new AlterationCampaign(Files.createTempDirectory("alterations"), seed);
        campaign.run(count);
        campaign.print(System.out);
    }

    void run(int count) throws Exception {
        for (Path file : whole) {
            if (!Verification.of(file).isIntact()) {
                throw new IllegalStateException(file + " is not intact before it is altered");
            }
        }
        int done = 0;
        while (done < count) {
            Path forged = Files.copy(
                    whole.get(done % whole.size()),
                    folder.resolve("forged.session"),
                    StandardCopyOption.REPLACE_EXISTING);
            String cell = alter(forged);
            if (cell.isEmpty()) {
                continue;
            }
            done++;
            boolean found = found(forged);
            int[] tally = byTable.computeIfAbsent(cell.substring(0, cell.indexOf('.')), table -> new int[2]);
            tally[0]++;
            tally[1] += found ? 1 : 0;
            if (!found) {
                unseen.add(cell);
            }
        }
    }

    private static boolean found(Path file) {
        try {
            return !Verification.of(file).isIntact();
        } catch (StoreException e) {
            return true;
        }
    }

    List<String> unseen() {
        return unseen;
    }

    Map<String, int[]> byTable() {
        return byTable;
    }

    void print(PrintStream out) {
        out.printf(Locale.ROOT, "%-12s %8s %8s%n", "table", "altered", "found");
        int altered = 0;
        int found = 0;
        for (Map.Entry<String, int[]> entry : byTable.entrySet()) {
            out.printf(Locale.ROOT, "%-12s %8d %8d%n", entry.getKey(), entry.getValue()[0], entry.getValue()[1]);
            altered += entry.getValue()[0];
            found += entry.getValue()[1];
        }
        out.printf(Locale.ROOT, "%-12s %8d %8d%n", "all", altered, found);
        unseen.forEach(cell -> out.println("not found: " + cell));
    }

    /** Says which cell was altered and how; empty where the chosen table has no row. */
    private String alter(Path file) throws SQLException, IOException {
        try (Connection connection = open(file);
                Statement statement = connection.createStatement()) {
            String table = one(texts(
                    statement, "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"));
            String column = one(texts(statement, "SELECT name FROM pragma_table_info('" + table + "')"));
            long rows = Long.parseLong(
                    texts(statement, "SELECT count(*) FROM " + table).get(0));
            if (rows == 0) {
                return "";
            }
            List<String> keys =
                    texts(statement, "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 ORDER BY pk");
            String key = keys.isEmpty() ? "rowid" : String.join(", ", keys);
            String where = "(" + key + ") = (SELECT " + key + " FROM " + table + " ORDER BY " + key + " LIMIT 1 OFFSET "
                    + random.nextLong(rows) + ")";
            return set(connection, table, column, where);
        }
    }

    private String set(Connection connection, String table, String column, String where) throws SQLException {
        Object before;
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT " + column + " FROM " + table + " WHERE " + where)) {
            before = row.next() ? row.getObject(1) : null;
        }
        Object after = another(before);
        try (PreparedStatement update =
                connection.prepareStatement("UPDATE " + table + " SET " + column + " = ? WHERE " + where)) {
            update.setObject(1, after);
            return update.executeUpdate() == 1 ? table + "." + column + " " + before + " -> " + after : "";
        } catch (SQLException e) {
            return "";
        }
    }

    private Object another(Object before) {
        if (before == null) {
            return random.nextBoolean() ? 0 : "x";
        }
        if (before instanceof byte[] bytes) {
            byte[] other = bytes.clone();
            other[random.nextInt(other.length)] ^= (byte) (1 << random.nextInt(8));
            return other;
        }
        if (before instanceof Double number) {
            return random.nextBoolean() ? Math.nextUp(number) : number * 1.01 + 1e-9;
        }
        if (before instanceof Number number) {
            return number.longValue() + (random.nextBoolean() ? 1 : -1) * (1L << random.nextInt(20));
        }
        String text = before.toString();
        return random.nextBoolean() || text.isEmpty() ? text + " " : text.substring(1);
    }

    private String one(List<String> of) {
        return of.get(random.nextInt(of.size()));
    }

    private static List<String> texts(Statement statement, String sql) throws SQLException {
        List<String> texts = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                texts.add(rows.getString(1));
            }
        }
        return texts;
    }

    private static Connection open(Path file) throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file);
    }
}
