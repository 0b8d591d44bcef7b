package railwitness.logger.recording.sheet;

import java.util.List;
import java.util.function.BiFunction;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.recording.plan.Plan;

/** A sheet that a person is writing: its text, and what it said when it was last in order. Not for several threads. */
public final class SheetDraft<T> {
    /** Begins the comment beside a value that is only an example. */
    static final String OPEN = "# fill in";

    private final SheetKind kind;
    private final BiFunction<String, String, SheetText<T>> reader;
    private SheetText<T> good;
    private String text;
    private String kept;
    private List<SheetFault> faults = List.of();

    private SheetDraft(SheetKind kind, SheetText<T> start, BiFunction<String, String, SheetText<T>> reader) {
        this.kind = kind;
        this.reader = reader;
        show(start);
    }

    public static SheetDraft<Design> design(SheetText<Design> start) {
        return new SheetDraft<>(SheetKind.DESIGN, start, Sheets::design);
    }

    public static SheetDraft<BenchSheet> bench(SheetText<BenchSheet> start) {
        return new SheetDraft<>(SheetKind.BENCH, start, Sheets::bench);
    }

    public static SheetDraft<Plan> plan(SheetText<Plan> start) {
        return new SheetDraft<>(SheetKind.PLAN, start, Sheets::plan);
    }

    /** Begins anew with another sheet. */
    public void show(SheetText<T> other) {
        good = other;
        text = other.text();
        kept = text;
        faults = List.of();
    }

    public SheetKind kind() {
        return kind;
    }

    public String text() {
        return text;
    }

    /** The sheet as it was when it was last in order. */
    public SheetText<T> good() {
        return good;
    }

    /** What {@link #read} found; empty when the text is in order. */
    public List<SheetFault> faults() {
        return faults;
    }

    public List<SheetKeys.Field> fields() {
        return SheetKeys.of(kind, text);
    }

    public SheetEdit edit() {
        return new SheetEdit(text);
    }

    /** @param literal in TOML; empty takes the key out */
    public void set(SheetKeys.Field field, String literal) {
        SheetEdit edit =
                edit().set(field.note().table(), field.place(), field.note().key(), literal);
        if (field.open()) {
            edit.withoutComment(
                    field.note().table(), field.place(), field.note().key());
        }
        text = edit.text();
    }

    /** Whether it was changed since it was opened or saved. */
    public boolean changed() {
        return !text.equals(kept);
    }

    /** The text was saved in a file of this name. */
    public SheetText<T> saved(String fileName) {
        kept = text;
        good = new SheetText<>(good.kind(), fileName, good.text(), good.content());
        return good;
    }

    /** Another text, as {@link SheetEdit} made it. */
    public void set(SheetEdit changed) {
        text = changed.text();
    }

    /** Reads the text as the sheet's reader does; answers whether it is in order. */
    public boolean read() {
        try {
            good = reader.apply(good.fileName(), text);
            faults = List.of();
        } catch (SheetException e) {
            faults = e.faults();
        }
        return faults.isEmpty();
    }
}
