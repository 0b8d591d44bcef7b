package railwitness.logger.ui.screen.help;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** One page of the manual. */
public final class HelpView {
    private static final String FIRST = "first-hour";

    private final Sheet face = new Sheet(new MigLayout("insets 14 20 8 20, fill"), Palette::sheet);
    private final Readable page = new Readable(new MigLayout("insets 4, gap 0 8, wrap 1, fillx", "[grow,fill]"));
    private final Label title = Label.of("", Type.TITLE);

    public HelpView() {
        page.setName("manual");
        page.reachable(Words.of("help.name"));
        title.setName("manual title");
        face.add(Scroll.of(page), "grow, push, wmin 0, hmin 0");
    }

    public JComponent face() {
        return face;
    }

    /** Shows the page under the first of these marks that has one; answers its title. */
    public String show(List<String> marks) {
        Manual manual = Manual.of(Locale.getDefault());
        Manual.Page shown = Stream.concat(marks.stream(), Stream.of(FIRST))
                .flatMap(mark -> manual.page(mark).stream())
                .findFirst()
                .orElseThrow();
        page.removeAll();
        title.setText(shown.title());
        page.add(title, "wmin 0");
        for (String part : shown.text().split("\\n\\s*\\n")) {
            if (part.startsWith("![")) {
                continue; // a picture of what the person has before them anyway
            }
            page.add(part.startsWith("|") ? table(part) : note(part), "growx, wmin 60");
        }
        page.revalidate();
        page.repaint();
        page.requestFocusInWindow();
        return shown.title();
    }

    /** Lines of a paragraph flow; those of a list stay apart. */
    private static JComponent note(String part) {
        String text = part.replaceAll("\\n\\s*(?![0-9-]+\\.? )", " ")
                .replace("**", "")
                .replace("`", "");
        return Note.of(text, Type.TEXT);
    }

    private static JComponent table(String part) {
        List<List<String>> lines = Arrays.stream(part.split("\\n"))
                .filter(line -> !line.matches("[|\\s-]+"))
                .map(line -> Arrays.stream(line.replaceAll("^\\||\\|$", "").split("\\|"))
                        .map(String::strip)
                        .toList())
                .toList();
        RuledSheet sheet = new RuledSheet(
                lines.get(0).get(0), lines.get(0).stream().map(Column::words).toList());
        List<Row> rows = new ArrayList<>();
        for (List<String> line : lines.subList(1, lines.size())) {
            rows.add(Row.of(line.stream().map(text -> Cell.of(text, Ink.INK)).toList()));
        }
        sheet.rows(rows);
        JPanel both = new JPanel(new MigLayout("insets 0, gap 0, wrap 1, fillx", "[grow,fill]"));
        both.setOpaque(false);
        both.add(sheet.head(), "growx, wmin 0");
        both.add(sheet, "growx, wmin 0");
        return both;
    }
}
