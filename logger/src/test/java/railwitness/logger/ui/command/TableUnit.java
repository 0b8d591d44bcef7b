package railwitness.logger.ui.command;

import java.util.Comparator;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.csv.CSVRecord;

/** A unit that answers from the circuit simulation's table: the row nearest to what supply and loads are set to. */
final class TableUnit {
    private static final double FULL_LOAD_AMPS = 4;

    private final ReferenceConverter table;
    private final Map<String, Double> amps = new ConcurrentHashMap<>(Map.of("plus", 0.0, "minus", 0.0));
    volatile boolean outputOn;
    volatile boolean remoteOn;
    volatile double volts;

    TableUnit(ReferenceConverter table) {
        this.table = table;
    }

    void load(String rail, double wanted) {
        amps.put(rail, wanted);
    }

    double amps(String rail) {
        return outputOn && remoteOn ? amps.get(rail) : 0;
    }

    /** A column of the table as it stands now; what an unpowered or resting unit shows is zero. */
    double shows(String column) {
        if (!outputOn) {
            return 0;
        }
        if (!remoteOn) {
            return column.equals("vin_avg_V") ? volts : column.equals("iin_avg_A") ? 0.0002 : 0;
        }
        return Double.parseDouble(nearest().get(column));
    }

    private CSVRecord nearest() {
        return table.rows().values().stream()
                .filter(row -> !row.get("name").startsWith("fault"))
                .min(Comparator.comparingDouble(this::distance))
                .orElseThrow();
    }

    private double distance(CSVRecord row) {
        return Math.abs(Double.parseDouble(row.get("vsrc_set_V")) - volts)
                + Math.abs(Double.parseDouble(row.get("load_pos_pct")) / 100 * FULL_LOAD_AMPS - amps.get("plus"))
                + Math.abs(Double.parseDouble(row.get("load_neg_pct")) / 100 * FULL_LOAD_AMPS - amps.get("minus"));
    }
}
