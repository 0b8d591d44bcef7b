package railwitness.logger.recording.importing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;

/** Takes a waveform from a table of two columns, seconds and volts, evenly spaced; one row of names may stand on top. */
public final class TraceImport {
    private static final int LEAST_SAMPLES = 16;
    private static final int MOST_SAMPLES = 5_000_000;

    /** No scope reads more, in seconds or volts. */
    private static final double LARGEST = 1e9;

    /** A time may be off the even spacing by this share of a step: scopes print times with few digits. */
    private static final double UNEVEN = 0.25;

    private final Path file;
    private final List<double[]> samples = new ArrayList<>();

    private TraceImport(Path file) {
        this.file = file;
    }

    /**
     * Reads the whole table.
     *
     * @throws ImportException with the row of the first fault
     */
    public static Waveform of(Path file, Channel channel) {
        TraceImport trace = new TraceImport(file);
        TableFile.read(file, TableForm.USUAL, rows -> {
            rows.forEach(trace::row);
            return rows.getRecordNumber();
        });
        return trace.waveform(channel);
    }

    private void row(CSVRecord row) {
        if (row.size() != 2) {
            throw fault(row, "has " + row.size() + " cells; a trace has two, time in s and volts");
        }
        try {
            double[] sample = {number(row.get(0)), number(row.get(1))};
            samples.add(sample);
        } catch (NumberFormatException e) {
            if (row.getRecordNumber() > 1) {
                throw fault(
                        row, Cells.shown(row.get(0) + "," + row.get(1)) + " must be two numbers with decimal points");
            }
        }
        if (samples.size() > MOST_SAMPLES) {
            throw fault(row, "a trace may have " + MOST_SAMPLES + " samples at most; cut it to a few cycles");
        }
    }

    private static double number(String text) {
        double value = Double.parseDouble(text.replace("\uFEFF", "").strip());
        if (!(Math.abs(value) <= LARGEST)) {
            throw new NumberFormatException(text);
        }
        return value;
    }

    private Waveform waveform(Channel channel) {
        int count = samples.size();
        if (count < LEAST_SAMPLES) {
            throw new ImportException(
                    file + ": holds " + count + " samples; a trace needs " + LEAST_SAMPLES + " or more");
        }
        double start = samples.get(0)[0];
        double step = (samples.get(count - 1)[0] - start) / (count - 1);
        for (int i = 0; i < count; i++) {
            if (!(step > 0) || Math.abs(samples.get(i)[0] - start - i * step) > UNEVEN * step) {
                throw new ImportException(file + ": sample " + (i + 1) + " at " + samples.get(i)[0]
                        + " s is not evenly spaced; times must rise in equal steps");
            }
        }
        return new Waveform(
                channel,
                start,
                step,
                samples.stream().mapToDouble(sample -> sample[1]).toArray());
    }

    private ImportException fault(CSVRecord row, String what) {
        return new ImportException(file + ": row " + row.getRecordNumber() + " " + what);
    }
}
