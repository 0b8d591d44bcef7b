package railwitness.drivers.sheet;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;

/**
 * One TOML file while it is read. A reader asks the {@link #root} for tables and keys; faults are collected, and {@link
 * #read} throws them all together, with every key nobody asked for.
 *
 * <pre>{@code
 * Sheet sheet = Sheet.of(path);
 * BenchSheet bench = sheet.read(BenchSheet::from);
 * ...
 * static BenchSheet from(SheetTable root) {
 *     SheetTable input = root.table("input", "the input");
 *     double volts = input.number("nominal_V", "nominal input voltage").between(6, 60).required();
 * }</pre>
 */
public final class Sheet {
    private final String file;
    private final String text;
    private final KeyNotes notes;
    private final List<SheetFault> faults = new ArrayList<>();
    private final List<SheetTable> tables = new ArrayList<>();

    private Sheet(String file, String text, KeyNotes notes) {
        this.file = file;
        this.text = text;
        this.notes = notes;
    }

    /** @throws SheetException when the file cannot be read, or is no text of a sheet's size */
    public static Sheet of(Path path) {
        String text = SheetFile.text(path);
        return of(path.getFileName().toString(), text);
    }

    /** @param file name for messages */
    public static Sheet of(String file, String text) {
        return of(file, text, new KeyNotes());
    }

    /** @param notes takes up every key that is asked for */
    public static Sheet of(String file, String text, KeyNotes notes) {
        return new Sheet(file, text, notes);
    }

    /** The text as it stands in the file. */
    public String text() {
        return text;
    }

    public String file() {
        return file;
    }

    /**
     * Reads the sheet. While faults are being collected a reader gets stand-in values; what it throws then is not
     * reported. An IllegalArgumentException without any fault found becomes one.
     *
     * @throws SheetException with all faults
     */
    public <T> T read(Function<SheetTable, T> reader) {
        faults.clear();
        tables.clear();
        T result = null;
        try {
            result = reader.apply(root());
            tables.forEach(table -> table.refuseUnknown(true));
        } catch (IllegalArgumentException e) {
            if (faults.isEmpty()) {
                fault(1, e.getMessage());
            }
            tables.forEach(table -> table.refuseUnknown(false));
        }
        if (!faults.isEmpty()) {
            throw new SheetException(faults);
        }
        return result;
    }

    private SheetTable root() {
        SheetFile.tooMuch(file, text).ifPresent(fault -> {
            throw new SheetException(List.of(fault));
        });
        TomlParseResult parsed = Toml.parse(text.startsWith("\uFEFF") ? text.substring(1) : text);
        if (parsed.hasErrors()) {
            throw new SheetException(parsed.errors().stream()
                    .map(e -> new SheetFault(file, e.position().line(), "is not TOML: " + e.getMessage()))
                    .toList());
        }
        return table("", parsed, 1);
    }

    SheetTable table(String name, org.tomlj.TomlTable content, int line) {
        SheetTable table = new SheetTable(this, name, content, line);
        tables.add(table);
        return table;
    }

    void fault(int line, String words) {
        faults.add(new SheetFault(file, line, words));
    }

    void note(KeyNote note) {
        notes.add(note);
    }
}
