package railwitness.drivers.converter;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Rows of the circuit simulation of a reference converter (ngspice tables), and the specimen that has its parameters. */
record ReferenceTable(Map<String, Map<String, Double>> rows) {
    static ReferenceTable read() {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                ReferenceTable.class.getResourceAsStream("reference-converter.csv"), StandardCharsets.UTF_8))) {
            List<String> lines =
                    in.lines().filter(line -> !line.startsWith("#")).toList();
            String[] head = lines.get(0).split(",");
            Map<String, Map<String, Double>> rows = new HashMap<>();
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",");
                Map<String, Double> row = new HashMap<>();
                for (int k = 1; k < cells.length; k++) {
                    row.put(head[k], Double.valueOf(cells[k]));
                }
                rows.put(cells[0], row);
            }
            return new ReferenceTable(rows);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The parameters of the simulated circuit; its drain snubbers' standing loss counts as gate loss. */
    static Specimen specimen() {
        Specimen usual = Specimen.usual();
        return usual.withDrive(new Specimen.Drive(25_000, 0.45, 9.5, 8.5, 0.5, 0.12, 0.11, 0, OptionalDouble.empty()));
    }

    double value(String row, String column) {
        return rows.get(row).get(column);
    }

    /** The state that our converter comes to under the row's conditions. */
    Balance solve(Specimen specimen, String row) {
        double plus = 4 * value(row, "load_pos_pct") / 100;
        double minus = 4 * value(row, "load_neg_pct") / 100;
        return new ConverterModel(specimen)
                .settled(Feed.of(value(row, "vsrc_set_V"), 1000), List.of(Draw.amps(plus), Draw.amps(minus)), 25, 25);
    }
}
