package railwitness.logger.recording.sheet;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetTable;

/** The three kinds of sheet, told apart by the table that only they have. */
public enum SheetKind {
    DESIGN(
            "design sheet",
            List.of("unit", "converter", "transformer"),
            DesignReader::design,
            "[transformer]\n[switches]\n[rectifier]\n[filter]\n"),
    BENCH("bench sheet", List.of("bench", "instrument"), BenchSheet::from, ""),
    PLAN("plan", List.of("plan", "stage"), PlanReader::plan, "");

    private final String word;
    private final List<String> marks;
    private final Function<SheetTable, ?> reader;
    private final String everyTable;

    /** @param everyTable the tables of which the reader only asks for keys where they are there */
    SheetKind(String word, List<String> marks, Function<SheetTable, ?> reader, String everyTable) {
        this.word = word;
        this.marks = marks;
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
        SheetMap map = new SheetMap(sheet.text());
        for (SheetKind kind : values()) {
            if (kind.marks.stream().anyMatch(mark -> map.has(List.of(mark)))) {
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
