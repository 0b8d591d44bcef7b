package railwitness.logger.reporting.exporting;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import railwitness.logger.text.TableCell;

/** A CSV file being written, as RFC 4180 has it: commas, CR LF, quotes where they are needed; UTF-8. */
final class CsvTable implements AutoCloseable {
    private final BufferedWriter out;
    private boolean begun;

    private CsvTable(BufferedWriter out) {
        this.out = out;
    }

    static CsvTable create(Path file) throws IOException {
        return new CsvTable(Files.newBufferedWriter(file, StandardCharsets.UTF_8));
    }

    /** Writes a row of names. */
    void head(Iterable<String> names) throws IOException {
        for (String name : names) {
            text(name);
        }
        end();
    }

    private void next() throws IOException {
        if (begun) {
            out.write(',');
        }
        begun = true;
    }

    /** A cell of numbers or of words of our own. */
    CsvTable plain(String cell) throws IOException {
        next();
        out.write(cell);
        return this;
    }

    CsvTable empty() throws IOException {
        next();
        return this;
    }

    /** Every digit that is needed to have the same number again. */
    CsvTable number(double value) throws IOException {
        return plain(ShortestNumber.of(value));
    }

    /** Text from outside, made harmless as {@link TableCell} says. */
    CsvTable text(String text) throws IOException {
        next();
        String cell = TableCell.of(text);
        if (cell.indexOf(',') >= 0 || cell.indexOf('"') >= 0 || !cell.equals(cell.strip())) {
            out.write('"');
            out.write(cell.replace("\"", "\"\""));
            out.write('"');
        } else {
            out.write(cell);
        }
        return this;
    }

    void end() throws IOException {
        out.write("\r\n");
        begun = false;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
