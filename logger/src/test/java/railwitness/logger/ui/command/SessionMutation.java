package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Alters a session's file at random: bytes, its length, its pages, its rows. */
final class SessionMutation {
    private final Random random;

    SessionMutation(Random random) {
        this.random = random;
    }

    /**
     * Does something to the file; what leaves it as it was is not counted as anything.
     *
     * @return what was done
     */
    String to(Path file) throws Exception {
        byte[] before = Files.readAllBytes(file);
        String what;
        do {
            what = once(file);
        } while (Arrays.equals(before, Files.readAllBytes(file)));
        return what;
    }

    private String once(Path file) throws Exception {
        return switch (random.nextInt(6)) {
            case 0 -> flip(file, 1 + random.nextInt(3));
            case 1 -> flip(file, 200);
            case 2 -> cut(file);
            case 3 -> swapPages(file);
            default -> row(file);
        };
    }

    private String flip(Path file, int count) throws IOException {
        StringBuilder where = new StringBuilder("bytes");
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            for (int i = 0; i < count; i++) {
                long at = (long) (random.nextDouble() * (random.nextInt(4) == 0 ? 4096 : raw.length()));
                raw.seek(at);
                int before = raw.read();
                raw.seek(at);
                raw.write(before ^ 1 << random.nextInt(8));
                where.append(i < 5 ? " " + at : "");
            }
        }
        return where.toString();
    }

    private String cut(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            long length = (long) (random.nextDouble() * raw.length());
            raw.setLength(length);
            return "cut to " + length;
        }
    }

    private String swapPages(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            int pages = (int) (raw.length() / 4096);
            int from = 1 + random.nextInt(pages - 1);
            int to = 1 + random.nextInt(pages - 1);
            byte[] page = new byte[4096];
            raw.seek(4096L * from);
            raw.readFully(page);
            byte[] there = new byte[4096];
            raw.seek(4096L * to);
            raw.readFully(there);
            raw.seek(4096L * to);
            raw.write(page);
            if (random.nextBoolean()) {
                raw.seek(4096L * from);
                raw.write(there);
            }
            return "page " + from + " to " + to;
        }
    }

    private String row(Path file) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA synchronous = OFF");
            List<String> tables = texts(statement, "SELECT name FROM sqlite_master WHERE type = 'table'");
            String table = tables.get(random.nextInt(tables.size()));
            List<String> columns = texts(statement, "SELECT name FROM pragma_table_info('" + table + "')");
            String column = columns.get(random.nextInt(columns.size()));
            String value = List.of(
                            "NULL",
                            "1e308",
                            "-1e308",
                            "9e999",
                            "9223372036854775807",
                            "-1",
                            "0",
                            "''",
                            "'x'",
                            "x'ff'",
                            "zeroblob(100000)",
                            "char(27) || '[31m'",
                            "hex(zeroblob(50000))",
                            "1.5",
                            "'\u202e'")
                    .get(random.nextInt(15));
            String sql = random.nextInt(4) == 0
                    ? "DELETE FROM " + table + (random.nextBoolean() ? "" : " WHERE random() % 2")
                    : "UPDATE OR IGNORE " + table + " SET " + column + " = " + value
                            + (random.nextBoolean() ? "" : " WHERE random() % 3 = 0");
            try {
                statement.executeUpdate(sql);
            } catch (SQLException e) {
                return "refused by SQLite: " + sql;
            }
            return sql;
        }
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
}
