package railwitness.logger.ui.screen.bench;

import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.JComponent;
import javax.swing.Timer;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.PortScan;
import railwitness.drivers.sheet.SheetFault;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetEdit;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.form.FieldEditor;
import railwitness.logger.ui.screen.form.SheetFiles;
import railwitness.logger.ui.screen.form.SheetForm;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.Words;

/** The bench sheet while it is being written: what stands on it, what of it is chosen, and the form of that. */
final class BenchEditor {
    private static final int PAUSE_MILLIS = 250;
    private static final int USUAL_BAUD = 9600;
    private static final BenchPlace WHOLE = new BenchPlace(BenchPlace.BENCH, 0);

    private final WindowModel desk;
    private final IntConsumer select;
    private final SheetDraft<BenchSheet> draft;
    private final SheetFiles files;
    private final SheetForm form = new SheetForm(this::typed);
    private final Timer pause = new Timer(PAUSE_MILLIS, e -> read());
    private Sheets shown;
    private List<InstrumentRows.Said> said = List.of();
    private BenchPlace chosen = WHOLE;
    private String chosenName = "";
    private List<SheetFault> elsewhere = List.of();

    /**
     * @param face over which files are chosen
     * @param select told the row that is to be selected, and to get the focus
     */
    BenchEditor(WindowModel desk, Asker asker, JComponent face, IntConsumer select) {
        this.desk = desk;
        this.select = select;
        this.draft = SheetDraft.bench(desk.sheets().bench());
        this.files = new SheetFiles(desk, asker, face);
        pause.setRepeats(false);
    }

    SheetForm form() {
        return form;
    }

    /** What stands on the bench, line by line. */
    List<InstrumentRows.Said> said() {
        return said;
    }

    BenchPlace chosen() {
        return chosen;
    }

    String chosenName() {
        return chosenName;
    }

    /** Which row it is. */
    int chosenRow() {
        return said.stream().map(InstrumentRows.Said::place).toList().indexOf(chosen);
    }

    /** The bench sheet as it was when it was last in order. */
    BenchSheet good() {
        return draft.good().content();
    }

    /** The instrument to which a port is given; empty where none. */
    String owner(String port) {
        return said.stream()
                .filter(one -> one.place().instrument() && one.port().equals(port))
                .map(InstrumentRows.Said::name)
                .findFirst()
                .orElse("");
    }

    /** Follows the desk; answers whether anything has changed there. */
    boolean follow() {
        if (shown == desk.sheets()) {
            return false;
        }
        shown = desk.sheets();
        if (shown.bench() != draft.good()) {
            draft.show(shown.bench());
            chosen = WHOLE;
        }
        build();
        return true;
    }

    /** Another row was selected. */
    void choose(int row) {
        if (row >= 0 && row < said.size() && !said.get(row).place().equals(chosen)) {
            chosen = said.get(row).place();
            build();
        }
    }

    /** The form of what is chosen, and every fault at its field. */
    private void build() {
        said = InstrumentRows.said(draft);
        chosenName = InstrumentRows.name(chosen, draft.edit());
        form.show(BenchParts.of(draft, chosen, desk.sheets().design().content()));
        elsewhere = form.faults(draft.edit(), draft.faults());
        desk.unfinished(draft.kind(), inOrder() ? "" : Words.of("unfinished." + draft.kind()));
        desk.unsaved(draft.kind(), draft.changed());
    }

    boolean inOrder() {
        return draft.faults().isEmpty();
    }

    int faults() {
        return draft.faults().size();
    }

    /** The first fault that is not marked in the form, with the name of what it belongs to. */
    String faultElsewhere() {
        if (elsewhere.isEmpty()) {
            return Words.of("unit.faults.marked");
        }
        SheetFault fault = elsewhere.get(0);
        SheetEdit sheet = draft.edit();
        return said.stream()
                .filter(one -> sheet.holds(one.place().header(), one.place().place(), fault.line()))
                .findFirst()
                .map(one -> one.name() + ": " + fault.text().replaceFirst("^\\[+\\w+\\]+ ", ""))
                .orElse(fault.toString());
    }

    private void typed(FieldEditor editor) {
        draft.set(editor.field(), editor.literal());
        pause.restart();
    }

    /** Reads what was typed, if that has not been done yet; answers whether it is in order. */
    boolean settle() {
        if (pause.isRunning()) {
            read();
        }
        return inOrder();
    }

    private void read() {
        pause.stop();
        if (draft.read()) {
            desk.sheets(new Sheets(
                    desk.sheets().design(), draft.good(), desk.sheets().plan()));
        }
        build();
    }

    void addInstrument() {
        add(BenchPlace.INSTRUMENT, "name = \"new meter\"\nkind = \"meter\"\nport = \"\"\nreads = \"\"");
    }

    void addByHand() {
        add(BenchPlace.BY_HAND, "name = \"meter in hand\"\nreads = \"\"");
    }

    private void add(String header, String body) {
        draft.set(draft.edit().add(header, body));
        chosen = new BenchPlace(header, draft.edit().count(header) - 1);
        read();
        select.accept(chosenRow());
        form.focusFirst();
    }

    void takeOut() {
        if (chosen.equals(WHOLE)) {
            desk.message(Words.of("bench.takeout.choose"));
            return;
        }
        draft.set(draft.edit().takeOut(chosen.header(), chosen.place()));
        chosen = WHOLE;
        read();
        select.accept(0);
    }

    /** The port becomes that of the chosen instrument, at the speed at which it answered. */
    void give(PortScan.Found found) {
        if (!chosen.instrument()) {
            desk.message(Words.of("bench.give.choose"));
            return;
        }
        SheetEdit sheet = draft.edit().set(chosen.header(), chosen.place(), "port", "\"" + found.port() + "\"");
        found.settings().ifPresent(settings -> {
            boolean stated =
                    !sheet.literal(chosen.header(), chosen.place(), "baud").isEmpty();
            if (stated || settings.baud() != USUAL_BAUD) {
                sheet.set(chosen.header(), chosen.place(), "baud", String.valueOf(settings.baud()));
            }
        });
        draft.set(sheet);
        desk.message("");
        read();
        select.accept(chosenRow());
    }

    void open() {
        files.open();
    }

    void save() {
        files.save(draft, fileName -> {
            draft.saved(fileName);
            desk.sheets(new Sheets(
                    desk.sheets().design(), draft.good(), desk.sheets().plan()));
        });
    }
}
