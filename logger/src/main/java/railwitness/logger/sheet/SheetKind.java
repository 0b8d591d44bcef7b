package railwitness.logger.sheet;

import java.nio.file.Path;
import java.util.function.Function;
import java.util.regex.Pattern;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetTable;

/** The three kinds of sheet, told apart by the table that only they have. */
public enum SheetKind {
    DESIGN(
            "design sheet",
            "^\\s*\\[(unit|converter|transformer)\\]",
            DesignReader::design,
            "[transformer]\n[switches]\n[rectifier]\n[filter]\n"),
    BENCH("bench sheet", "^\\s*\\[(bench|\\[instrument\\])\\]", BenchSheet::from, ""),
    PLAN("plan", "^\\s*\\[(plan|\\[stage\\])\\]", PlanReader::plan, "");

    private final String word;
    private final Pattern mark;
    private final Function<SheetTable, ?> reader;
    private final String everyTable;

    /** @param everyTable the tables of which the reader only asks for keys where they are there */
    SheetKind(String word, String mark, Function<SheetTable, ?> reader, String everyTable) {
        this.word = word;
        this.mark = Pattern.compile(mark, Pattern.MULTILINE);
        this.reader = reader;
        this.everyTable = everyTable;
    }

    Function<SheetTable, ?> reader() {
        return reader;
    }

    String everyTable() {
        return everyTable;
    }

    /** What people call it. */
    public String word() {
        return word;
    }

    /**
     * Reads a sheet of whichever kind it is.
     *
     * @throws railwitness.drivers.sheet.SheetException with all faults
     */
    public static SheetKind check(Path file) {
        Sheet sheet = Sheet.of(file);
        for (SheetKind kind : values()) {
            if (kind.mark.matcher(sheet.text()).find()) {
                sheet.read(kind.reader);
                return kind;
            }
        }
        return sheet.read(root -> {
            throw new IllegalArgumentException(
                    "is no sheet of ours: a design sheet has [unit], a bench sheet [bench], a"
                            + " plan [plan] or [[stage]]");
        });
    }
}
