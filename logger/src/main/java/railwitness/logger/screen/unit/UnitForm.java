package railwitness.logger.screen.unit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.screen.paper.Label;
import railwitness.logger.screen.paper.Readable;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.theme.Type;
import railwitness.logger.sheet.SheetEdit;
import railwitness.logger.sheet.SheetKeys;

/** All keys of a design sheet, table by table. */
final class UnitForm extends Readable {
    private final transient Consumer<FormRow> changed;
    private transient List<FormRow> rows = List.of();

    UnitForm(Consumer<FormRow> changed) {
        super(new MigLayout("insets 0 0 10 12, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        this.changed = changed;
    }

    void show(String text) {
        removeAll();
        List<FormRow> made = new ArrayList<>();
        String table = "";
        for (SheetKeys.Field field : SheetKeys.of(railwitness.logger.sheet.SheetKind.DESIGN, text).stream()
                .filter(f -> !f.header().equals("[[requirement]]"))
                .toList()) {
            String mine = field.note().table() + field.place();
            if (!mine.equals(table)) {
                table = mine;
                String key = "table." + field.note().table().replaceAll("[\\[\\]]", "");
                add(
                        Label.of(
                                Words.orElse(key, field.note().table())
                                        + (field.place() > 0 ? " " + (field.place() + 1) : ""),
                                Type.HEADING),
                        "gaptop 10");
            }
            FormRow row = new FormRow(field, changed);
            made.add(row);
            add(row, "wmin 60");
        }
        rows = List.copyOf(made);
        revalidate();
        repaint();
    }

    /** Marks each fault at its field; what belongs to none is returned. */
    List<String> faults(String text, List<SheetFault> faults) {
        SheetEdit edit = new SheetEdit(text);
        List<SheetFault> left = new ArrayList<>(faults);
        for (FormRow row : rows) {
            SheetKeys.Field field = row.field();
            int line = edit.lineOf(
                    field.note().table(), field.place(), field.note().key());
            String words = left.stream()
                    .filter(fault ->
                            fault.text().matches("(?s).*\\b" + field.note().key() + "\\b.*")
                                    && (line == 0 || fault.line() == line))
                    .findFirst()
                    .map(fault -> {
                        left.remove(fault);
                        return fault.text();
                    })
                    .orElse("");
            row.fault(words);
        }
        return left.stream().map(SheetFault::toString).toList();
    }
}
