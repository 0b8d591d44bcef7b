package railwitness.analysis.uncertainty;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads the columns of a small table of numbers that lies beside the tests; '#' begins a remark. */
public final class Table {
    private final List<double[]> rows;

    public Table(String name) {
        try (InputStream in = Table.class.getResourceAsStream(name)) {
            rows = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(Table::numbers)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[] numbers(String line) {
        return Arrays.stream(line.trim().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    public List<double[]> rows() {
        return rows;
    }

    public double[] column(int index) {
        return rows.stream().mapToDouble(row -> row[index]).toArray();
    }
}
