package railwitness.logger.ui.screen.findings;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.Paper;
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
    private static final String WORKSHOP = "certificate.workshop";

    private final transient Remembered remembered;
    private final Label unit = Label.muted("", Type.TEXT);
    private final Form form = new Form();
    private final JComboBox<String> paper;
    private final JTextField workshop;
    private final JTextField customer;
    private final JComboBox<String> before;
    private final JCheckBox causes;
    private final Note file = Note.muted("", Type.TEXT);
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
        workshop = form.field("workshop", Words.of("certificate.workshop"), changed);
        customer = form.field("customer", Words.of("certificate.customer"), changed);
        before = form.choice("before", Words.of("certificate.before"), List.of(), changed);
        causes = form.tick("causes", Words.of("certificate.causes"), changed);
        add(form, "growx, wmin 60");
        why.setName("certificate refused");
        refused.add(Label.of(Words.of("certificate.refused"), Type.HEADING), "wmin 0");
        refused.add(why, "growx, wmin 60");
        add(refused, "growx, wmin 60, gaptop 8");
        add(file, "growx, wmin 60, gaptop 8");
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
            workshop.setText(remembered.get(WORKSHOP).orElse(""));
            customer.setText("");
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

    /** What is remembered for the next certificate. */
    Map<String, String> choices() {
        return Map.of(
                PAPER, wanted().name(),
                CAUSES, causes.isSelected() ? "yes" : "no",
                WORKSHOP, workshop.getText().strip());
    }

    private Paper wanted() {
        return paper.getSelectedIndex() == 1 ? Paper.LETTER : Paper.A4;
    }

    /** The order as it stands now. */
    Order order() {
        int at = before.getSelectedIndex() - 1;
        return new Order(
                wanted(),
                causes.isSelected(),
                at >= 0 ? Optional.of(earlier.get(at).file()) : Optional.empty(),
                typed(workshop),
                typed(customer),
                Instant.now());
    }

    private static Optional<String> typed(JTextField field) {
        return Optional.of(field.getText().strip()).filter(text -> !text.isEmpty());
    }
}
