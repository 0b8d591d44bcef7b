package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import railwitness.logger.recording.store.block.BlockCodec;

/** Works a session out again and compares. */
final class Verifier {
    private final Connection connection;
    private final WorkBound bound;
    private final FaultList faults = new FaultList();
    private final List<RecordSource> sources = new ArrayList<>();

    private Verifier(Connection connection, WorkBound bound) {
        this.connection = connection;
        this.bound = bound;
    }

    static Verification verify(Path file, DoubleConsumer progress) {
        return verify(file, progress, true);
    }

    /**
     * The chain of a long session alone, as far as it can be worked out in a time: neither its pages, which are read whole
     * for that, nor what follows from the chain's end.
     *
     * @param mostNanos about how long that may take
     * @return what was found wrong so far; its faults are empty where there was nothing
     */
    static Verification glance(Path file, long mostNanos) {
        long end = System.nanoTime() + mostNanos;
        return verify(
                file,
                share -> {
                    if (System.nanoTime() - end > 0) {
                        throw new TimeIsUp();
                    }
                },
                false);
    }

    /** What ends a glance. */
    @SuppressWarnings("serial")
    private static final class TimeIsUp extends RuntimeException {
        TimeIsUp() {
            super("time is up", null, false, false);
        }
    }

    private static Verification verify(Path file, DoubleConsumer progress, boolean whole) {
        SessionState state;
        try (SessionFile session = SessionFile.open(file)) {
            state = session.state();
        }
        OpenedFile opened = OpenedFile.open(file);
        Connection connection = opened.connection();
        try (BlockCodec codec = new BlockCodec()) {
            return new Verifier(connection, opened.bound()).run(state, codec, progress, whole);
        } catch (SQLException e) {
            throw OpenedFile.damaged(file, e);
        } finally {
            Sqlite.closeQuietly(connection);
        }
    }

    private Verification run(SessionState state, BlockCodec codec, DoubleConsumer progress, boolean whole)
            throws SQLException {
        execute("BEGIN");
        if (whole) {
            checkPages();
        }
        checkSchema();
        execute(summarySchema());
        for (RecordTable table : RecordTable.values()) {
            sources.add(new RowSource(connection, table, faults));
        }
        PlainSource plain = new PlainSource(connection);
        sources.add(plain);
        List<BlockSource> blocks = blocks(codec);
        sources.addAll(blocks);
        ChainCheck chain = new ChainCheck(sources, faults);
        bound.begin();
        boolean ended = ended(chain, progress);
        bound.begin();
        if (ended) {
            checkBlockCount(blocks);
            checkSummaries();
        }
        for (RecordSource source : sources) {
            source.close();
        }
        long readings =
                plain.count() + blocks.stream().mapToLong(BlockSource::count).sum();
        return new Verification(faults.faults(), faults.firstSecond(), readings, chain.links(), chain.seal(), state);
    }

    /** False where its time was up before. */
    private boolean ended(ChainCheck chain, DoubleConsumer progress) throws SQLException {
        try {
            chain.run(connection, progress);
            return true;
        } catch (TimeIsUp e) {
            return false;
        }
    }

    private void checkPages() throws SQLException {
        for (String line : texts("PRAGMA integrity_check(3)")) {
            if (!line.equals("ok")) {
                faults.add("the file is damaged: " + line);
            }
        }
    }

    private void checkSchema() throws SQLException {
        Map<String, String> found = SchemaCheck.entries(connection);
        if (!found.equals(SchemaCheck.expectedEntries())) {
            found.entrySet().removeAll(SchemaCheck.expectedEntries().entrySet());
            faults.add("the tables are not those of a session"
                    + (found.isEmpty()
                            ? ""
                            : ": " + found.values().iterator().next().replaceAll("\\s+", " ")));
        }
    }

    private String summarySchema() {
        String schema = SessionDatabase.schema();
        int from = schema.indexOf("CREATE TABLE summary");
        return schema.substring(from, schema.indexOf(';', from)).replace("TABLE summary", "TEMP TABLE summary_again");
    }

    private List<BlockSource> blocks(BlockCodec codec) throws SQLException {
        Map<Long, String> channels = new LinkedHashMap<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT seq, name FROM channel ORDER BY seq")) {
            while (rows.next()) {
                channels.put(rows.getLong(1), rows.getString(2));
            }
        }
        SummaryTable again = new SummaryTable(connection, "summary_again");
        List<BlockSource> blocks = new ArrayList<>();
        for (Map.Entry<Long, String> channel : channels.entrySet()) {
            blocks.add(new BlockSource(connection, channel.getKey(), channel.getValue(), codec, again, faults));
        }
        return blocks;
    }

    private void checkBlockCount(List<BlockSource> blocks) throws SQLException {
        int found = blocks.stream().mapToInt(BlockSource::blockCount).sum();
        if (!texts("SELECT count(*) FROM block").get(0).equals(String.valueOf(found))) {
            faults.add("packed readings stand there of a channel that is not known");
        }
    }

    private void checkSummaries() throws SQLException {
        String columns = "SELECT channel, span_s, start_s, readings, measured, lowest, highest, total FROM ";
        String differences =
                "SELECT DISTINCT start_s, ifnull((SELECT name FROM channel AS c WHERE c.seq = d.channel), d.channel) FROM"
                        + " (SELECT * FROM (" + columns + "summary EXCEPT " + columns + "summary_again) UNION ALL"
                        + " SELECT * FROM (" + columns + "summary_again EXCEPT " + columns
                        + "summary)) AS d ORDER BY 1 LIMIT 5";
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(differences)) {
            while (rows.next()) {
                faults.addFrom(
                        rows.getLong(1),
                        "the summary of " + rows.getString(2) + " at second " + rows.getLong(1)
                                + " does not agree with its readings");
            }
        }
    }

    private void execute(String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private List<String> texts(String sql) throws SQLException {
        return texts(connection, sql);
    }

    private static List<String> texts(Connection connection, String sql) throws SQLException {
        List<String> lines = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                lines.add(rows.getString(1));
            }
        }
        return lines;
    }
}
