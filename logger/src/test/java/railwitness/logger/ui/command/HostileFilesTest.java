package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.sheet.Sheets;

/** Every command that takes a sheet or a table, with every hostile file: refused in words, at once, with exit 2. */
class HostileFilesTest {
    private static final long LONGEST_NANOS = 10_000_000_000L;

    @TempDir
    private Path folder;

    private Map<String, Path> files() throws IOException {
        String design = Sheets.demo().design().text();
        Map<String, byte[]> texts = new LinkedHashMap<>();
        texts.put("lists 10000 deep", text("a = " + "[".repeat(10_000) + "]".repeat(10_000)));
        texts.put("tables 10000 deep", text("a = " + "{a=".repeat(10_000)));
        texts.put("key of 10000 parts", text("a" + ".a".repeat(10_000) + " = 1"));
        texts.put("header of 10000 parts", text("[a" + ".a".repeat(10_000) + "]\n"));
        texts.put("no end of quotes", text("name = \"\"\"" + "x\n".repeat(100_000)));
        texts.put(
                "a name of 1 MB",
                text(design.replaceFirst("name = \"[^\"]*\"", "name = \"" + "n".repeat(1_000_000) + "\"")));
        texts.put(
                "a name of 1 kB",
                text(design.replaceFirst("name = \"[^\"]*\"", "name = \"" + "n".repeat(1_000) + "\"")));
        texts.put("5 MB of words", text("word\n".repeat(1_000_000)));
        texts.put("20000 columns", text("time_s,stage,step" + columns() + "\n1,no-load,a\n"));
        texts.put("a row without end", text("time_s,stage,step,plus.voltage_V\n\"" + "1,".repeat(1_000_000)));
        texts.put("cells of 1e308", text("time_s,stage,step,plus.voltage_V\n0,no-load,a,1e308\n1,no-load,a,-1e308\n"));
        texts.put("centuries", text("time_s,stage,step,plus.voltage_V\n0,no-load,a,1\n9e9,no-load,a,1\n"));
        texts.put("nan", text("time_s,stage,step,plus.voltage_V\n0,no-load,a,nan\n"));
        texts.put("numbers of no size", text(design.replaceAll("= -?[0-9.]+", "= 1e308")));
        texts.put("nan in a sheet", text(design.replaceAll("= -?[0-9.]+", "= nan")));
        texts.put("UTF-16", design.getBytes(StandardCharsets.UTF_16));
        texts.put("zero bytes", new byte[100_000]);
        texts.put("a zero byte", text(design + "\0"));
        texts.put("no UTF-8", new byte[] {'a', '=', (byte) 0xFF, (byte) 0xFE});
        texts.put("empty", new byte[0]);
        texts.put("only a mark", text("\uFEFF"));
        texts.put("signs that act", text("[unit]\nname = \"\u202E\u001B[2J\"\n\"\u202Ekey\u0085\" = 3\n"));
        Map<String, Path> files = new LinkedHashMap<>();
        for (Map.Entry<String, byte[]> one : texts.entrySet()) {
            files.put(one.getKey(), Files.write(folder.resolve("f" + files.size() + ".toml"), one.getValue()));
        }
        files.put("a folder", Files.createDirectory(folder.resolve("folder")));
        files.put("no file", folder.resolve("none.toml"));
        for (String device : List.of("/dev/zero", "/dev/urandom", "/dev/full")) {
            if (Files.exists(Path.of(device))) {
                files.put(device, Path.of(device));
            }
        }
        return files;
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String columns() {
        StringBuilder columns = new StringBuilder();
        for (int i = 0; i < 20_000; i++) {
            columns.append(",n").append(i).append(".voltage_V");
        }
        return columns.toString();
    }

    private Map<String, List<String>> commands(Path file) {
        String f = file.toString();
        String out = folder.resolve("out.session").toString();
        String good = folder.resolve("good.csv").toString();
        return Map.of(
                "check", List.of("check", f),
                "rehearse design", List.of("rehearse", "--design", f, "--out", out),
                "rehearse bench", List.of("rehearse", "--bench", f, "--out", out),
                "rehearse plan", List.of("rehearse", "--plan", f, "--out", out),
                "import", List.of("import", f, "--out", out),
                "import design", List.of("import", good, "--design", f, "--out", out),
                "import bench", List.of("import", good, "--bench", f, "--out", out),
                "import semicolons", List.of("import", f, "--separator", "semicolon", "--units", "cells", "--out", out),
                "import instants", List.of("import", f, "--time", "iso8601", "--out", out),
                "import trace", List.of("import-trace", f, "--out", out));
    }

    @Test
    void everyPairIsRefusedInWordsAtOnce() throws IOException {
        Files.writeString(
                folder.resolve("good.csv"), "time_s,stage,step,plus.voltage_V\n0,no-load,a,36\n1,no-load,a,36\n");
        List<String> wrong = new ArrayList<>();
        int pairs = 0;
        for (Map.Entry<String, Path> file : files().entrySet()) {
            for (Map.Entry<String, List<String>> command :
                    commands(file.getValue()).entrySet()) {
                pairs++;
                long began = System.nanoTime();
                Said said = Said.by(command.getValue().toArray(String[]::new));
                String what =
                        command.getKey() + " with " + file.getKey() + ": exit " + said.exitCode() + ", " + said.err();
                boolean slow = System.nanoTime() - began > LONGEST_NANOS;
                boolean trace = said.err().contains("\tat ") || said.err().contains("mistake in the program");
                boolean acts = (said.out() + said.err()).chars().anyMatch(c -> c == 0x202E || c == 0x1B || c == 0x85);
                boolean long_ = said.err().lines().count() > 41 || said.err().length() > 20_000;
                if (slow
                        || trace
                        || acts
                        || long_
                        || said.exitCode() != 2
                        || said.err().isBlank()) {
                    wrong.add((slow ? "slow: " : "") + what.substring(0, Math.min(400, what.length())));
                }
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(pairs).isGreaterThan(200);
    }
}
