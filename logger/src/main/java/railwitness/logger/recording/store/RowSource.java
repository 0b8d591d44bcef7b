package railwitness.logger.recording.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import railwitness.logger.recording.store.chain.HashChain;

/** The rows of a record table. */
final class RowSource implements RecordSource {
    private final RecordTable table;
    private final FaultList faults;
    private final Statement statement;
    private final ResultSet rows;
    private long seq;
    private long nanos = Long.MIN_VALUE;
    private String words;

    RowSource(Connection connection, RecordTable table, FaultList faults) throws SQLException {
        this.table = table;
        this.faults = faults;
        this.words = table.tableName().replace('_', ' ');
        statement = connection.createStatement();
        rows = statement.executeQuery(table.selectSql());
        next();
    }

    private void next() throws SQLException {
        seq = rows.next() ? rows.getLong(1) : Long.MAX_VALUE;
    }

    @Override
    public long seq() {
        return seq;
    }

    @Override
    public void feed(HashChain chain) throws SQLException {
        Object[] cells = new Object[table.columnCount()];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = rows.getObject(i + 2);
        }
        chain.row(table.tag(), seq, cells);
        nanos = table.hasTime() && cells[0] instanceof Number at ? at.longValue() : Long.MIN_VALUE;
        if (table == RecordTable.SHEET) {
            checkSheet(cells);
        }
        next();
    }

    private void checkSheet(Object[] cells) {
        words = "sheet " + cells[0] + " (" + cells[1] + ")";
        byte[] digest = EntryCells.digest(String.valueOf(cells[0]), String.valueOf(cells[1]), String.valueOf(cells[2]));
        if (!(cells[3] instanceof byte[] kept && Arrays.equals(kept, digest))) {
            faults.add("the " + words + " is not as it was recorded");
        }
    }

    @Override
    public long nanos() {
        return nanos;
    }

    @Override
    public String words() {
        return words;
    }

    @Override
    public void close() throws SQLException {
        statement.close();
    }
}
