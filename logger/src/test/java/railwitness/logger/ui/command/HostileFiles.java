package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import railwitness.logger.recording.sheet.Sheets;

/**
 * Files that no one made for this program, or that someone made against it: as sheets, as tables, as sessions and as
 * certificates. What a system cannot make (a pipe, a device) is left out, and {@link #leftOut} says so.
 */
final class HostileFiles {
    private static final String ENDLESS =
            " AS WITH RECURSIVE n(seq) AS (SELECT 1 UNION ALL SELECT seq + 1 FROM n) SELECT seq, seq AS at_ns, 'x' AS what,"
                    + " 'y' AS text, seq AS last_seq FROM n";

    /** What is done to a copy of a whole session so that nothing in it can be read as one. */
    private static final Map<String, String> REPLACED = Map.of(
            "a session of endless events", "DROP TABLE event; CREATE VIEW event" + ENDLESS,
            "a session of endless heads", "DROP TABLE session; CREATE VIEW session" + ENDLESS,
            "a session of endless digests", "DROP TABLE link; CREATE VIEW link" + ENDLESS,
            "a session without a head", "DELETE FROM session",
            "a session without tables", "PRAGMA writable_schema = ON; DELETE FROM sqlite_master; VACUUM",
            "a session of another age", "PRAGMA user_version = 9999",
            "a session whose sheet is 2 MB", "UPDATE sheet SET text = hex(zeroblob(1000000)) WHERE kind = 'design'",
            "a session of nulls", "UPDATE step SET stage = NULL, step = NULL; UPDATE event SET text = NULL",
            "a session that acts", "UPDATE session SET unit_name = char(27) || '[2J' || char(8238)",
            "another program's database", "DROP TABLE session; DROP TABLE link; CREATE TABLE price (item, pence)");

    private final Path folder;
    private final Path whole;
    private final Map<String, Path> all = new LinkedHashMap<>();
    private final StringBuilder leftOut = new StringBuilder();

    /** @param whole a session from which some are made; it stays as it is */
    HostileFiles(Path folder, Path whole) throws IOException {
        this.folder = folder;
        this.whole = whole;
        sheets();
        tables();
        foreign();
        sessions();
        special();
    }

    /** By what is wrong with them. */
    Map<String, Path> all() {
        return all;
    }

    /** What this system could not make, one line each; empty where it could make all. */
    String leftOut() {
        return leftOut.toString();
    }

    private void add(String what, byte[] bytes) throws IOException {
        all.put(what, Files.write(folder.resolve("f" + all.size() + ".toml"), bytes));
    }

    private void add(String what, String text) throws IOException {
        add(what, text.getBytes(StandardCharsets.UTF_8));
    }

    private void sheets() throws IOException {
        String design = Sheets.demo().design().text();
        add("lists 10000 deep", "a = " + "[".repeat(10_000) + "]".repeat(10_000));
        add("tables 10000 deep", "a = " + "{a=".repeat(10_000));
        add("key of 10000 parts", "a" + ".a".repeat(10_000) + " = 1");
        add("header of 10000 parts", "[a" + ".a".repeat(10_000) + "]\n");
        add("10000 tables", "[[a]]\n".repeat(10_000));
        add("no end of quotes", "name = \"\"\"" + "x\n".repeat(100_000));
        add("a name of 1 MB", named(design, "n".repeat(1_000_000)));
        add("a name of 1 kB", named(design, "n".repeat(1_000)));
        add("numbers of no size", design.replaceAll("= -?[0-9.]+", "= 1e308"));
        add("nan in a sheet", design.replaceAll("= -?[0-9.]+", "= nan"));
        add("a zero byte", design + "\0");
        add("signs that act", "[unit]\nname = \"\u202E\u001B[2J\"\n\"\u202Ekey\u0085\" = 3\n");
    }

    private static String named(String design, String name) {
        return design.replaceFirst("name = \"[^\"]*\"", "name = \"" + name + "\"");
    }

    private void tables() throws IOException {
        StringBuilder columns = new StringBuilder("time_s,stage,step");
        for (int i = 0; i < 20_000; i++) {
            columns.append(",n").append(i).append(".voltage_V");
        }
        add("20000 columns", columns + "\n1,no-load,a\n");
        add("a row without end", "time_s,stage,step,plus.voltage_V\n\"" + "1,".repeat(1_000_000));
        add("cells of 1e308", "time_s,stage,step,plus.voltage_V\n0,no-load,a,1e308\n1,no-load,a,-1e308\n");
        add("centuries", "time_s,stage,step,plus.voltage_V\n0,no-load,a,1\n9e9,no-load,a,1\n");
        add("nan", "time_s,stage,step,plus.voltage_V\n0,no-load,a,nan\n");
        add("a number of 100000 digits", "time_s,stage,step,plus.voltage_V\n0,no-load,a," + "9".repeat(100_000) + "\n");
    }

    private void foreign() throws IOException {
        add("5 MB of words", "word\n".repeat(1_000_000));
        add("UTF-16", Sheets.demo().design().text().getBytes(StandardCharsets.UTF_16));
        add("zero bytes", new byte[100_000]);
        add("no UTF-8", new byte[] {'a', '=', (byte) 0xFF, (byte) 0xFE});
        add("empty", new byte[0]);
        add("only a mark", "\uFEFF");
        add("a PDF of nothing", "%PDF-1.7\n%%EOF\n");
        Path large = Files.writeString(folder.resolve("f" + all.size() + ".toml"), "# a sheet\nname = \"");
        try (RandomAccessFile raw = new RandomAccessFile(large.toFile(), "rw")) {
            raw.setLength(100_000_000);
        }
        all.put("100 MB", large);
        byte[] noise = new byte[200_000];
        new Random(20_261).nextBytes(noise);
        add("noise", noise);
        byte[] head = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(head, 0, noise, 0, head.length);
        add("noise that claims to be a session", noise);
    }

    private void sessions() throws IOException {
        for (Map.Entry<String, String> one : REPLACED.entrySet()) {
            Path copy = folder.resolve("f" + all.size() + ".session");
            Files.copy(whole, copy, StandardCopyOption.REPLACE_EXISTING);
            try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + copy);
                    Statement statement = connection.createStatement()) {
                for (String sql : one.getValue().split("; ")) {
                    statement.executeUpdate(sql);
                }
            } catch (SQLException e) {
                throw new IOException(one.getKey() + " could not be made", e);
            }
            all.put(one.getKey(), copy);
        }
    }

    private void special() throws IOException {
        all.put("a folder", Files.createDirectory(folder.resolve("folder")));
        all.put("no file", folder.resolve("none.toml"));
        for (String device : List.of("/dev/zero", "/dev/urandom", "/dev/full", "/dev/tty")) {
            if (Files.exists(Path.of(device))) {
                all.put(device, Path.of(device));
            } else {
                leftOut.append(device).append(": not on this system\n");
            }
        }
        Path pipe = folder.resolve("pipe.toml");
        if (made("mkfifo", pipe.toString())) {
            all.put("a pipe", pipe);
        } else {
            leftOut.append("a pipe: mkfifo is not on this system\n");
        }
        if (Files.exists(Path.of("/dev/zero"))) {
            all.put(
                    "a link to an endless device",
                    Files.createSymbolicLink(folder.resolve("link.toml"), Path.of("/dev/zero")));
        }
    }

    private static boolean made(String... command) {
        try {
            Process process = new ProcessBuilder(command).start();
            return process.waitFor(5, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
