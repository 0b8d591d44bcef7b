package railwitness.logger.ui.screen.sessions;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComboBox;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.recording.importing.TableForm;
import railwitness.logger.recording.importing.TablePreview;
import railwitness.logger.recording.importing.TableSession;
import railwitness.logger.recording.record.NewHead;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.stage.SessionNames;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.stage.Work;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Cell;
import railwitness.logger.ui.screen.widgets.Column;
import railwitness.logger.ui.screen.widgets.FileChoice;
import railwitness.logger.ui.screen.widgets.Form;
import railwitness.logger.ui.screen.widgets.Ink;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Row;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Sentences;
import railwitness.logger.ui.screen.widgets.Words;

/** How a table of readings is taken: its sheets, how it is written, its first rows as they would be taken. */
final class TablePanel extends Readable {
    private static final int ROWS = 3;
    private static final int SHOWN = 14;
    private static final char[] SEPARATORS = {',', ';', '\t'};

    private final transient WindowModel desk;
    private final Label file = Label.muted("", Type.TEXT);
    private final Form form = new Form();
    private final SheetChoice<Design> design;
    private final SheetChoice<BenchSheet> bench;
    private final JComboBox<String> separator;
    private final JComboBox<String> decimal;
    private final JComboBox<String> time;
    private final JComboBox<String> units;
    private final Mark wrong = new Mark();
    private final Note fault = Note.of("", Type.TEXT);
    private final RuledSheet preview = new RuledSheet("table preview", List.of());
    private transient Path table;
    private transient TablePreview seen = new TablePreview(List.of(), List.of(), "");
    private int looks;

    TablePanel(WindowModel desk) {
        super(new MigLayout("insets 0 0 0 10, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.desk = desk;
        FileChoice files = new FileChoice(this, desk.folder());
        design = new SheetChoice<>("design", Words.of("import.design"), files, Sheets::design);
        bench = new SheetChoice<>("bench", Words.of("import.bench"), files, Sheets::bench);
        add(Label.of(Words.of("import.title"), Type.TITLE), "wmin 0");
        add(file, "wmin 0, gapbottom 6");
        form.row("design sheet", Words.of("import.design"), design);
        form.row("bench sheet", Words.of("import.bench"), bench);
        separator = choice("separator", "import.comma", "import.semicolon", "import.tab");
        decimal = choice("decimal", "import.decimal.point", "import.decimal.comma");
        time = choice("time", "import.time.seconds", "import.time.instants");
        units = choice("units", "import.units.names", "import.units.cells");
        add(form, "growx, wmin 60");
        fault.setName("table fault");
        wrong.add(fault, "growx, wmin 60");
        add(wrong, "growx, wmin 60, gaptop 6");
        add(Label.of(Words.of("import.preview"), Type.HEADING), "wmin 0, gaptop 8");
        add(preview.head(), "growx");
        add(preview, "growx");
    }

    private JComboBox<String> choice(String name, String... keys) {
        return form.choice(
                name,
                Words.of("import." + name),
                List.of(keys).stream().map(Words::of).toList(),
                this::look);
    }

    void show(Path wanted) {
        table = wanted;
        file.setText(wanted.toString());
        form.fill(() -> {
            design.show(desk.sheets().design());
            bench.show(desk.sheets().bench());
            if (desk.demo()) {
                design.none();
                bench.none();
            }
        });
        look();
        javax.swing.SwingUtilities.invokeLater(separator::requestFocusInWindow);
    }

    private TableForm form() {
        return new TableForm(
                SEPARATORS[separator.getSelectedIndex()],
                decimal.getSelectedIndex() == 1,
                time.getSelectedIndex() == 1,
                units.getSelectedIndex() == 1);
    }

    private void look() {
        int look = ++looks;
        Path wanted = table;
        TableForm how = form();
        desk.work(
                () -> TablePreview.of(wanted, how, ROWS),
                found -> {
                    if (look == looks) {
                        show(found);
                    }
                },
                desk::message);
    }

    private void show(TablePreview found) {
        seen = found;
        fault.setText(words(found.fault()));
        wrong.setVisible(!found.fault().isEmpty());
        List<Column> columns = new ArrayList<>(List.of(Column.words(Words.of("import.column"))));
        for (int i = 1; i <= found.rows().size(); i++) {
            columns.add(Column.numbers(Words.of("import.row", i + 1)));
        }
        List<Row> rows = new ArrayList<>();
        for (int c = 0; c < Math.min(SHOWN, found.columns().size()); c++) {
            rows.add(row(found, c));
        }
        if (found.columns().size() > SHOWN) {
            rows.add(Row.of(
                    List.of(Cell.of(Words.of("import.more", found.columns().size() - SHOWN), Ink.MUTED))));
        }
        preview.columns(columns);
        preview.rows(rows);
        revalidate();
        repaint();
    }

    private static Row row(TablePreview found, int column) {
        List<Cell> cells = new ArrayList<>(List.of(Cell.ink(found.columns().get(column))));
        found.rows().forEach(row -> cells.add(Cell.of(column < row.size() ? row.get(column) : "", Ink.MUTED)));
        return Row.of(cells);
    }

    /** The importer's words without the options of the command line and the folder. */
    private String words(String found) {
        return Sentences.capital(found.replace(table + ": ", ""))
                .replaceAll("\\s*\\(--[^)]*\\)|\\s*\\(leave --[^)]*\\)", "");
    }

    /** Whether its first rows can be taken as it is read now. */
    boolean good() {
        return seen.fault().isEmpty() && !seen.rows().isEmpty();
    }

    /** What makes the session of it; to be called behind the desk, gives the file. */
    WindowModel.Working<Path> taken() {
        SheetChoice.Sheeted<Design> designSheet = design.chosen();
        SheetChoice.Sheeted<BenchSheet> benchSheet = bench.chosen();
        Path from = table;
        TableForm how = form();
        String version = desk.starter().programVersion();
        Path folder = desk.folder();
        return progress -> write(from, how, designSheet.read(), benchSheet.read(), folder, version, progress);
    }

    private static Path write(
            Path from,
            TableForm how,
            Optional<SheetText<Design>> design,
            Optional<SheetText<BenchSheet>> bench,
            Path folder,
            String version,
            Work progress)
            throws java.io.IOException {
        java.nio.file.Files.createDirectories(folder);
        Path out = SessionFolder.free(folder, SessionFolder.stem(from) + "-imported", SessionNames.ENDING);
        new TableSession(from, how, design, bench)
                .write(
                        out,
                        start -> NewHead.of(
                                design.map(sheet -> sheet.content().unit()),
                                start.wall().orElseGet(Instant::now),
                                start.rehearsal(),
                                version,
                                "",
                                from.getFileName().toString()),
                        progress::at);
        return out;
    }
}
