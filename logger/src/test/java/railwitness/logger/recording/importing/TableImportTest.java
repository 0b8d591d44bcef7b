package railwitness.logger.recording.importing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.drivers.reading.Channel;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.TimeSpan;
import railwitness.logger.recording.store.Trace;

class TableImportTest {
    private static final String HEAD = "time_s,stage,step,input.voltage_V,input.current_A\n";

    @TempDir
    Path folder;

    private int made;

    private Trace taken(String table, TableForm form, String channel) throws Exception {
        Path file = Files.writeString(folder.resolve("t" + made++ + ".csv"), table);
        Path session = take(file, form);
        try (SessionFile opened = SessionFile.open(session)) {
            return opened.trace(Channel.of(channel), TimeSpan.ALL);
        }
    }

    private Path take(Path file, TableForm form) {
        TableStart start = TableStart.of(file, form);
        Path session = folder.resolve("s" + made++ + ".session");
        try (SessionWriter writer = SessionWriter.create(
                session,
                new SessionHead(
                        "i",
                        start.wall().orElse(Instant.EPOCH),
                        ZoneOffset.UTC,
                        start.rehearsal(),
                        "test",
                        "",
                        "u",
                        "",
                        ""))) {
            TableImport.into(writer, file, form, start.wall());
            writer.finish(SessionState.COMPLETE);
        }
        return session;
    }

    private void refused(String table, TableForm form, String... words) throws Exception {
        assertThatThrownBy(() -> taken(table, form, "input.voltage"))
                .isInstanceOf(ImportException.class)
                .hasMessageContainingAll(words)
                .message()
                .doesNotContain("\n")
                .doesNotContain("\u001b");
    }

    private void refused(String table, String... words) throws Exception {
        refused(table, TableForm.USUAL, words);
    }

    @Test
    void decimalCommasAndSemicolonsAreTaken() throws Exception {
        Trace trace = taken(
                "time_s;stage;step;input.voltage_V;plus.current_mA\n0,5;no-load;0 %;13,81;\"2,5\"\n1;no-load;0 %;-1,3e1;3\n",
                new TableForm(';', true, false, false), "input.voltage");
        assertThat(trace.values()).containsExactly(13.81, -13);
        assertThat(trace.repliedNanos()).containsExactly(500_000_000L, 1_000_000_000L);
    }

    @Test
    void tabsAndUnitsInBracketsAreTaken() throws Exception {
        Trace trace = taken(
                "time_s\tstage\tstep\t\"input.voltage [mV]\"\tplus.current (A)\n0\tno-load\t0 %\t13800\t1\n",
                new TableForm('\t', false, false, false), "input.voltage");
        assertThat(trace.values()[0]).isCloseTo(13.8, within(1e-12));
    }

    @Test
    void unitsInCellsAreTakenAndMixedOnesRefused() throws Exception {
        TableForm form = new TableForm(',', false, false, true);
        String head = "time_s,stage,step,input.voltage\n0,no-load,0 %,\"13.8 V\"\n";
        assertThat(taken(head + "1,no-load,0 %,13.9V\n", form, "input.voltage").values())
                .containsExactly(13.8, 13.9);
        refused(head + "1,no-load,0 %,13900 mV\n", form, "row 3", "input.voltage", "another unit");
        refused(head + "1,no-load,0 %,13.9 A\n", form, "row 3", "another unit");
        refused(head + "1,no-load,0 %,13.9\n", form, "row 3", "number with its unit");
    }

    @Test
    void instantsAreTakenToTheNanosecond() throws Exception {
        TableForm form = new TableForm(',', false, true, false);
        String table = "time,stage,step,input.voltage_V\n2026-03-04T05:06:07.5Z,no-load,0 %,13.8\n"
                + "2026-03-04T06:06:08.500000001+01:00,no-load,0 %,13.9\n";
        assertThat(taken(table, form, "input.voltage").repliedNanos()).containsExactly(0, 1_000_000_001L);
        refused(table.replace(".5Z", ""), form, "row 2", "column time", "ISO 8601");
        refused(table, "'time_s' is missing", "--time iso8601");
    }

    @Test
    void readingsBetweenStepsBelongToNone() throws Exception {
        Path file = Files.writeString(
                folder.resolve("between.csv"),
                HEAD + "0,,,13.8,0.1\n1,no-load,0 %,13.8,0.2\n2,no-load,0 %,13.8,0.2\n3,,,13.8,0.3\n");
        try (SessionFile session = SessionFile.open(take(file, TableForm.USUAL))) {
            assertThat(session.steps()).hasSize(1);
            assertThat(session.steps().get(0).average()).contains(new TimeSpan(1_000_000_000L, 2_000_000_001L));
            assertThat(session.trace(Channel.of("input.current"), TimeSpan.ALL).count())
                    .isEqualTo(4);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,no-load,0 %,13.8,1;0.5,no-load,0 %,13.8,1|row 3|column time_s|lies before",
                "1,no-load,0 %,13.8,x|row 2|column input.current_A|not a number",
                "1,no-load,0 %,13.8|row 2|column input.current_A|cut short",
                "1,no-load,0 %,NaN,1|row 2|column input.voltage_V|not a number",
                "1,no-load,0 %,1e999,1|row 2|column input.voltage_V|not a number",
                "1e99,no-load,0 %,1,1|row 2|column time_s|not a time",
                "1,no-load,,1,1|row 2|column step|is empty",
                "1,party,0 %,1,1|row 2|column stage|must be one of",
                "1,no-load,0 %,13.8 V,1|row 2|column input.voltage_V|--units cells",
                "1,no-load,a\\b,13.8,1|row 2|column step|lone backslash",
                "1,no-load,0 %,1,1;1,no-load,1 %,1,1|row 3|column time_s|must begin later",
                "1,no-load,0 %,1,1;2,no-load,1 %,1,1;3,no-load,0 %,1,1|row 4|column step|comes again"
            })
    void faultIsNamedByRowAndColumn(String rows, String row, String column, String words) throws Exception {
        refused(HEAD + rows.replace(';', '\n') + "\n", row, column, words);
    }

    @Test
    void wrongHeadsAreRefused() throws Exception {
        String row = "\n1,no-load,0 %,1,1\n";
        refused("time_s,stage,step,input.voltage_V,input.voltage_V" + row, "column 5", "stands in column 4 already");
        refused("time_s,stage,step,input.voltage_V,input.voltage_mV" + row, "column 5", "stands in column 4 already");
        refused("time_s,time_s,stage,step,input.voltage_V" + row, "column 2", "already");
        refused("time_s,stage,step,input.voltage_A,plus.voltage_V" + row, "column 4", "must be in one of V, mV");
        refused("time_s;stage;step;input.voltage_V" + row, "--separator semicolon");
        refused("stage,step,input.voltage_V,plus.voltage_V,minus.voltage_V" + row, "'time_s' is missing");
        refused("time_s,stage,step" + row, "no column of readings");
    }

    @Test
    void decimalCommaIsNotGuessed() throws Exception {
        String table = "time_s;stage;step;input.voltage_V\n1;no-load;0 %;13,8\n";
        refused(table, new TableForm(';', false, false, false), "row 2", "input.voltage_V", "--decimal comma");
        refused(table.replace("13,8", "1.013,8"), new TableForm(';', true, false, false), "row 2", "not a number");
    }

    @Test
    void controlCharactersAreRefusedAndShown() throws Exception {
        refused(HEAD + "1,no-load,0 %\u001b[2J,1,1\n", "row 2", "column step", "control character", "[U+001B]");
        refused("time_s,stage,step,\u202einput.voltage_V\n1,a,b,1\n", "[U+202E]");
    }

    @Test
    void emptyForeignAndCutFilesAreRefused() throws Exception {
        refused("", "is empty");
        refused(HEAD, "holds no readings");
        refused(HEAD + "1,no-load,\"0 %,1,1\n", "cut short");
        Path session = folder.resolve("x.csv");
        Files.write(session, "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII));
        assertThatThrownBy(() -> take(session, TableForm.USUAL)).hasMessageContaining("is a database");
        Path utf16 = Files.write(folder.resolve("y.csv"), HEAD.getBytes(StandardCharsets.UTF_16));
        assertThatThrownBy(() -> take(utf16, TableForm.USUAL)).hasMessageContaining("UTF-8");
        Path latin = Files.write(
                folder.resolve("z.csv"), (HEAD + "1,no-load,\u00e9,1,1\n").getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> take(latin, TableForm.USUAL)).hasMessageContaining("not UTF-8");
        assertThatThrownBy(() -> take(folder.resolve("none.csv"), TableForm.USUAL))
                .hasMessageContaining("cannot be read");
    }
}
