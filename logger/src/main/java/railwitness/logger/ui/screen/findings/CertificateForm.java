package railwitness.logger.ui.screen.findings;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.certificate.Particular;
import railwitness.logger.reporting.certificate.Particulars;
import railwitness.logger.ui.screen.stage.Remembered;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Form;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Mark;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.Words;

/** What kind of certificate is wanted. What stays the same from unit to unit is remembered for the next one. */
final class CertificateForm extends Readable {
    private static final String PAPER = "certificate.paper";
    private static final String CAUSES = "certificate.causes";
    private static final String PARTICULAR = "certificate.";
    private static final String LETTERHEAD = "certificate.letterhead";

    private final transient Remembered remembered;
    private final Label unit = Label.muted("", Type.TEXT);
    private final Form form = new Form();
    private final JComboBox<String> paper;
    private final Map<Particular, JTextField> particulars = new EnumMap<>(Particular.class);
    private final JTextField letterhead;
    private final JComboBox<String> before;
    private final JCheckBox causes;
    private final Note file = Note.muted("", Type.TEXT);
    private final Note warning = Note.of("", Type.TEXT);
    private final Mark refused = new Mark();
    private final Note why = Note.of("", Type.TEXT);
    private transient List<EarlierSessions.Before> earlier = List.of();

    /** @param changed told when something else is wanted */
    CertificateForm(Remembered remembered, Runnable changed) {
        super(new MigLayout("insets 0 0 0 10, gap 0 6, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        this.remembered = remembered;
        add(Label.of(Words.of("certificate.title"), Type.TITLE), "wmin 0");
        add(unit, "wmin 0, gapbottom 6");
        paper = form.choice(
                "paper",
                Words.of("certificate.paper"),
                List.of(Words.of("certificate.A4"), Words.of("certificate.LETTER")),
                changed);
        for (Particular what : Particular.values()) {
            particulars.put(what, form.field(what.key(), Words.of(PARTICULAR + what.key()), changed));
        }
        letterhead = form.field("letterhead", Words.of(LETTERHEAD), changed);
        before = form.choice("before", Words.of("certificate.before"), List.of(), changed);
        causes = form.tick("causes", Words.of("certificate.causes"), changed);
        add(form, "growx, wmin 60");
        why.setName("certificate refused");
        refused.add(Label.of(Words.of("certificate.refused"), Type.HEADING), "wmin 0");
        refused.add(why, "growx, wmin 60");
        add(refused, "growx, wmin 60, gaptop 8");
        add(file, "growx, wmin 60, gaptop 8");
        warning.setVisible(false);
        add(warning, "growx, wmin 60, gaptop 8");
        refused("");
    }

    /** For another session: what is remembered, and nothing of the customer before. */
    void begin(String unitWords, String kept) {
        unit.setText(unitWords);
        file.setText(Words.of("certificate.keeps", kept));
        refused("");
        form.fill(() -> {
            paper.setSelectedIndex(remembered.get(PAPER).equals(Optional.of(Paper.LETTER.name())) ? 1 : 0);
            causes.setSelected(!remembered.get(CAUSES).equals(Optional.of("no")));
            particulars.forEach((what, field) -> field.setText(
                    what.isRemembered()
                            ? remembered.get(PARTICULAR + what.key()).orElse("")
                            : ""));
            letterhead.setText(remembered.get(LETTERHEAD).orElse(""));
        });
        earlier(List.of());
    }

    /** Which sessions can be cited as the test before. */
    void earlier(List<EarlierSessions.Before> found) {
        earlier = found;
        form.fill(() -> {
            before.removeAllItems();
            before.addItem(Words.of("certificate.before.none"));
            found.forEach(one -> before.addItem(one.words()));
        });
    }

    /** Why there is no certificate; empty when there can be one. */
    void refused(String words) {
        why.setText(words);
        refused.setVisible(!words.isEmpty());
        file.setVisible(words.isEmpty());
        revalidate();
    }

    /** Said before it is printed: signs that no font has. */
    void lacking(Set<String> signs) {
        warning.setText(signs.isEmpty() ? "" : Words.of("certificate.lacking", String.join(" ", new TreeSet<>(signs))));
        warning.setVisible(!signs.isEmpty());
    }

    /** What is remembered for the next certificate. */
    Map<String, String> choices() {
        Map<String, String> choices = new HashMap<>();
        choices.put(PAPER, wanted().name());
        choices.put(CAUSES, causes.isSelected() ? "yes" : "no");
        choices.put(LETTERHEAD, letterhead.getText().strip());
        particulars.forEach((what, field) -> {
            if (what.isRemembered()) {
                choices.put(PARTICULAR + what.key(), field.getText().strip());
            }
        });
        return choices;
    }

    private Paper wanted() {
        return paper.getSelectedIndex() == 1 ? Paper.LETTER : Paper.A4;
    }

    /**
     * The order as it stands now.
     *
     * @param folder where it will be kept, and earlier issues lie
     */
    Order order(Path folder) {
        int at = before.getSelectedIndex() - 1;
        Map<Particular, String> stated = new EnumMap<>(Particular.class);
        particulars.forEach((what, field) -> stated.put(what, field.getText()));
        return new Order(
                wanted(),
                causes.isSelected(),
                at >= 0 ? Optional.of(earlier.get(at).file()) : Optional.empty(),
                new Particulars(stated),
                Instant.now().truncatedTo(ChronoUnit.MILLIS),
                false,
                Optional.of(folder),
                Optional.empty());
    }

    /** Folder of the workshop's own head; empty where there is none. */
    Optional<Path> letterhead() {
        return Optional.of(letterhead.getText().strip())
                .filter(text -> !text.isEmpty())
                .map(Path::of);
    }
}
