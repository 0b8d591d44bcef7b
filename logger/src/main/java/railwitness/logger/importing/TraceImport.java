package railwitness.logger.importing;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Waveform;

/** Takes a waveform from a table of two columns, seconds and volts, evenly spaced; one row of names may stand on top. */
public final class TraceImport {
    private static final int LEAST_SAMPLES = 16;
    private static final int MOST_SAMPLES = 5_000_000;

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
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
                CSVParser parser = format.parse(reader)) {
            for (CSVRecord row : parser) {
                trace.row(row);
            }
        } catch (CharacterCodingException e) {
            throw new ImportException(file + ": is not UTF-8 text; save it as CSV in UTF-8");
        } catch (CSVException | java.io.UncheckedIOException e) {
            throw new ImportException(file + ": is not CSV: " + e.getMessage());
        } catch (IOException e) {
            throw new ImportException(file + ": cannot be read; is the name right, and may you read it?");
        }
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
                throw fault(row, "'" + row.get(0) + "," + row.get(1) + "' must be two numbers with decimal points");
            }
        }
        if (samples.size() > MOST_SAMPLES) {
            throw fault(row, "a trace may have " + MOST_SAMPLES + " samples at most; cut it to a few cycles");
        }
    }

    private static double number(String text) {
        double value = Double.parseDouble(text.replace("\uFEFF", ""));
        if (!Double.isFinite(value)) {
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
