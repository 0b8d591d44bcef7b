package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.FileChoice;
import railwitness.logger.ui.screen.widgets.Words;

/** A sheet that goes with a table: the one on the desk, one from a file, or none. */
final class SheetChoice<T> extends JPanel {
    private static final int DESK = 0;
    private static final int NONE = 1;

    private final transient Function<Path, SheetText<T>> reader;
    private final JComboBox<String> choice = new JComboBox<>();
    private final transient List<Path> files = new ArrayList<>();
    private transient SheetText<T> onDesk;

    /** @param reader reads such a sheet from a file; slow */
    SheetChoice(String name, String meaning, FileChoice asked, Function<Path, SheetText<T>> reader) {
        super(new MigLayout("insets 0, gap 8, fillx", "[grow,fill][]"));
        this.reader = reader;
        setOpaque(false);
        choice.setName(name + " choice");
        choice.getAccessibleContext().setAccessibleName(meaning);
        choice.setFont(Type.TEXT.font());
        JButton other = new JButton(Words.of("import.file"));
        other.setName(name + " file");
        other.setFont(Type.TEXT.font());
        other.getAccessibleContext().setAccessibleName(meaning + ": " + Words.of("import.file"));
        other.addActionListener(e -> asked.open(meaning).ifPresent(this::add));
        add(choice, "h 30!, wmin 60");
        add(other, "h 30!");
    }

    void show(SheetText<T> sheet) {
        onDesk = sheet;
        choice.removeAllItems();
        files.clear();
        choice.addItem(Words.of("import.sheet.desk", sheet.fileName()));
        choice.addItem(Words.of("import.sheet.none"));
    }

    /** None, until the person chooses one. */
    void none() {
        choice.setSelectedIndex(NONE);
    }

    private void add(Path file) {
        files.add(file);
        choice.addItem(file.getFileName().toString());
        choice.setSelectedIndex(NONE + files.size());
    }

    /** Reads the chosen sheet where that is asked for; the reading is slow, the answer at once. */
    Sheeted<T> chosen() {
        int at = choice.getSelectedIndex();
        SheetText<T> desk = onDesk;
        if (at == DESK) {
            return () -> Optional.of(desk);
        }
        if (at == NONE) {
            return Optional::empty;
        }
        Path file = files.get(at - NONE - 1);
        return () -> Optional.of(reader.apply(file));
    }

    /** Gives the sheet, slowly. */
    interface Sheeted<T> {
        Optional<SheetText<T>> read();
    }
}
