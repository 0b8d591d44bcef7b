package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** The circuit simulation's table (see the head of the resource), by name of the point. */
record ReferenceConverter(Map<String, CSVRecord> rows) {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .get();
    private static final String HEAD =
            "time_s,stage,step,input.voltage_V,input.current_A,plus.voltage_V,plus.current_A,"
                    + "minus.voltage_V,minus.current_A,plus.ripple_V,minus.ripple_V\n";

    static ReferenceConverter table() throws IOException {
        Map<String, CSVRecord> rows = new TreeMap<>();
        try (Reader reader = new InputStreamReader(
                ReferenceConverter.class.getResourceAsStream("/railwitness/logger/reference/converter.csv"),
                StandardCharsets.UTF_8)) {
            FORMAT.parse(reader).forEach(row -> rows.put(row.get("name"), row));
        }
        return new ReferenceConverter(rows);
    }

    double of(String point, String column) {
        return Double.parseDouble(rows.get(point).get(column));
    }

    /** The healthy unit's points as a table to import, one reading each. */
    Path asTable(Path file) throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        int second = 0;
        for (String name : List.of("load_000", "load_010", "load_025", "load_050", "load_075", "load_100")) {
            String step = Integer.parseInt(name.substring(5)) + " %";
            line(text, second++, name.equals("load_000") ? "no-load" : "load-sweep", step, name);
        }
        for (String name : List.of("line_10.5", "line_11.0", "line_12.0", "line_12.6", "line_14.4")) {
            line(text, second++, "line-sweep", name.substring(5) + " V", name);
        }
        line(text, second++, "cross-load", "plus 100 %", "unbal_100_010");
        line(text, second, "cross-load", "minus 100 %", "unbal_010_100");
        return Files.writeString(file, text);
    }

    /** The load sweep of a faulty unit as a table to import. */
    Path asTable(Path file, String fault) throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        int second = 0;
        for (String load : List.of("000", "010", "025", "050", "075", "100")) {
            String step = Integer.parseInt(load) + " %";
            line(text, second++, load.equals("000") ? "no-load" : "load-sweep", step, fault + "_" + load);
        }
        return Files.writeString(file, text);
    }

    private void line(StringBuilder text, int second, String stage, String step, String name) {
        CSVRecord row = rows.get(name);
        text.append(second).append(',').append(stage).append(',').append(step);
        for (String column : List.of(
                "vin_avg_V",
                "iin_avg_A",
                "vpos_avg_V",
                "ipos_A",
                "vneg_avg_V",
                "ineg_A",
                "ripple_pos_rms_V",
                "ripple_neg_rms_V")) {
            text.append(',').append(row.get(column));
        }
        text.append('\n');
    }
}
