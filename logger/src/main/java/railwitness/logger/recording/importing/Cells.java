package railwitness.logger.recording.importing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVRecord;
import railwitness.logger.text.TableCell;
import railwitness.logger.text.VisibleText;

/** Reads cells as what their columns say, or names file, row and column of what is wrong. */
final class Cells {
    private static final Pattern NUMBER = Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,3})?");
    private static final Pattern SECONDS = Pattern.compile("[-+]?\\d{1,10}(\\.\\d{0,20})?([eE][-+]?\\d)?");
    private static final Pattern WITH_UNIT = Pattern.compile("([-+0-9.,]+(?:[eE][-+]?[0-9]+)?)\\s*([A-Za-z]+)");
    private static final int SHOWN = 60;
    private static final int LONGEST = 200;
    /** No instrument reads more, in any unit. */
    private static final double LARGEST = 1e9;

    private static final long LONGEST_NANOS = Duration.ofDays(400).toNanos();

    private final Path file;
    private final TableForm form;

    Cells(Path file, TableForm form) {
        this.file = file;
        this.form = form;
    }

    /** The cell without spaces around it. */
    String text(CSVRecord row, int at, String column) {
        if (at >= row.size()) {
            throw fault(row, column, "is not there: the row has only " + row.size() + " cells; is the file cut short?");
        }
        String text = row.get(at).strip();
        text.chars().filter(Character::isISOControl).findFirst().ifPresent(control -> {
            throw fault(row, column, shown(text) + " holds a control character; take it out");
        });
        return text;
    }

    /** A name as the export writes it. */
    String name(CSVRecord row, int at, String column) {
        try {
            String name = TableCell.text(text(row, at, column));
            if (name.length() > LONGEST) {
                throw fault(row, column, shown(name) + " is longer than " + LONGEST + " characters; shorten it");
            }
            return name;
        } catch (IllegalArgumentException e) {
            throw fault(row, column, VisibleText.line(e.getMessage()));
        }
    }

    double number(CSVRecord row, String text, String column) {
        String plain = form.decimalComma() ? text.replace(',', '.') : text;
        boolean mixed = form.decimalComma() && text.indexOf('.') >= 0;
        if (!mixed && NUMBER.matcher(plain).matches()) {
            double value = Double.parseDouble(plain);
            if (Math.abs(value) <= LARGEST) {
                return value;
            }
            if (Double.isFinite(value)) {
                throw fault(
                        row, column, shown(text) + " is more than any instrument reads (1e9); mend or empty the cell");
            }
        }
        throw fault(
                row,
                column,
                shown(text) + " is not a number with a decimal " + (form.decimalComma() ? "comma" : "point")
                        + hint(text));
    }

    private String hint(String text) {
        if (!form.decimalComma() && text.matches("[-+]?\\d+,\\d+")) {
            return "; where commas mark the decimals, choose the decimal comma (--decimal comma)";
        }
        if (!form.unitsInCells() && WITH_UNIT.matcher(text).matches()) {
            return "; where the cells carry units, choose that (--units cells)";
        }
        return "";
    }

    /** Number and unit of a cell such as {@code 13.8 V}. */
    String[] withUnit(CSVRecord row, String text, String column) {
        Matcher parts = WITH_UNIT.matcher(text);
        if (!parts.matches()) {
            throw fault(row, column, shown(text) + " is not a number with its unit, such as 13.8 V");
        }
        return new String[] {parts.group(1), parts.group(2)};
    }

    /** Exact to the nanosecond. */
    long nanos(CSVRecord row, String text, String column) {
        String plain = form.decimalComma() ? text.replace(',', '.') : text;
        if (!SECONDS.matcher(plain).matches() || Math.abs(Double.parseDouble(plain)) > 9e9) {
            throw fault(row, column, shown(text) + " is not a time in seconds");
        }
        return new BigDecimal(plain)
                .movePointRight(9)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    Instant instant(CSVRecord row, String text, String column) {
        try {
            return Instant.parse(text);
        } catch (DateTimeException e) {
            throw fault(
                    row,
                    column,
                    shown(text) + " is not an instant such as 2026-03-04T05:06:07.5Z (ISO 8601, with its"
                            + " offset from UTC)");
        }
    }

    long nanosSince(CSVRecord row, Instant start, Instant instant, String column) {
        try {
            return Duration.between(start, instant).toNanos();
        } catch (ArithmeticException e) {
            throw fault(row, column, "lies centuries away from the first row; is the date right?");
        }
    }

    /** A time that goes with a first one. */
    long near(CSVRecord row, long first, long nanos, String column) {
        if (nanos - first > LONGEST_NANOS || first - nanos > LONGEST_NANOS) {
            throw fault(row, column, "lies more than 400 days away from the first row; is it right?");
        }
        return nanos;
    }

    boolean yes(CSVRecord row, String text, String column) {
        if (!text.equals("yes") && !text.equals("no")) {
            throw fault(row, column, shown(text) + " must be yes or no");
        }
        return text.equals("yes");
    }

    static String shown(String text) {
        String cut = text.length() > SHOWN ? text.substring(0, SHOWN) + "..." : text;
        return "'" + VisibleText.line(cut) + "'";
    }

    ImportException fault(CSVRecord row, String column, String what) {
        return new ImportException(
                file + ": row " + row.getRecordNumber() + ", column " + VisibleText.line(column) + ": " + what);
    }
}
