package railwitness.logger.recording.importing;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;
import java.util.function.LongSupplier;

/** Ends the reading of a table whose row does not end, before it fills the memory. */
final class RowReader extends FilterReader {
    private static final int LONGEST = 1 << 18;

    private LongSupplier rows = () -> 0;
    private long row;
    private long length;

    RowReader(Reader in) {
        super(in);
    }

    /** A row is too long. */
    static final class TooLong extends IOException {
        TooLong(long row) {
            super("row " + row + " has more than " + LONGEST + " characters");
        }
    }

    /** @param done how many rows are through */
    void rows(LongSupplier done) {
        rows = done;
    }

    @Override
    public int read() throws IOException {
        return counted(super.read(), 1);
    }

    @Override
    public int read(char[] into, int from, int most) throws IOException {
        int count = super.read(into, from, most);
        return counted(count, count);
    }

    private int counted(int answer, int characters) throws IOException {
        if (rows.getAsLong() != row) {
            row = rows.getAsLong();
            length = 0;
        }
        length += characters;
        if (length > LONGEST) {
            throw new TooLong(row + 1);
        }
        return answer;
    }
}
