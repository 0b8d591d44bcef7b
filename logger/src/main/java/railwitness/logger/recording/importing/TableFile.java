package railwitness.logger.recording.importing;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;

/** A table on its way in: opened, and everything that can be wrong with a file said in one line. */
final class TableFile {
    private static final byte[] SESSION = "SQLite format 3".getBytes(StandardCharsets.US_ASCII);

    private TableFile() {}

    /** What is done with the rows. */
    interface Use<T> {
        T with(CSVParser rows) throws IOException;
    }

    static <T> T read(Path file, TableForm form, Use<T> use) {
        refuseForeign(file);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(form.separator())
                .setIgnoreEmptyLines(true)
                .get();
        try (RowReader reader = new RowReader(Files.newBufferedReader(file, StandardCharsets.UTF_8));
                CSVParser parser = format.parse(reader)) {
            reader.rows(parser::getRecordNumber);
            return use.with(parser);
        } catch (RowReader.TooLong e) {
            throw tooLong(file, e);
        } catch (CharacterCodingException e) {
            throw notText(file);
        } catch (CSVException e) {
            throw new ImportException(file + ": is not CSV: " + e.getMessage());
        } catch (java.io.UncheckedIOException e) {
            if (e.getCause() instanceof RowReader.TooLong row) {
                throw tooLong(file, row);
            }
            throw e.getCause() instanceof CharacterCodingException
                    ? notText(file)
                    : new ImportException(file + ": is not CSV, or is cut short: "
                            + e.getCause().getMessage());
        } catch (IOException e) {
            throw unreadable(file);
        }
    }

    private static ImportException tooLong(Path file, RowReader.TooLong row) {
        return new ImportException(file + ": " + row.getMessage() + "; is a quotation mark left open?");
    }

    private static ImportException notText(Path file) {
        return new ImportException(file + ": is not UTF-8 text; save it as CSV in UTF-8");
    }

    private static ImportException unreadable(Path file) {
        return new ImportException(file + ": cannot be read; is the name right, and may you read it?");
    }

    private static void refuseForeign(Path file) {
        byte[] begin;
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new ImportException(file + ": is a folder, a pipe or a device; name a file");
        }
        try (InputStream in = Files.newInputStream(file)) {
            begin = in.readNBytes(512);
        } catch (IOException e) {
            throw unreadable(file);
        }
        if (java.util.Arrays.equals(begin, 0, Math.min(SESSION.length, begin.length), SESSION, 0, SESSION.length)) {
            throw new ImportException(
                    file + ": is a database, such as a session, and no table; a session is read by" + " findings");
        }
        if (begin.length == 0) {
            throw new ImportException(file + ": is empty; the first row names the columns, the others hold numbers");
        }
        for (byte one : begin) {
            if (one == 0) {
                throw new ImportException(file + ": is another program's file or UTF-16 text; save it as CSV in UTF-8");
            }
        }
    }
}
