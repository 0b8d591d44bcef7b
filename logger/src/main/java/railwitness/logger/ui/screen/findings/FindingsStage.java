package railwitness.logger.ui.screen.findings;

import java.awt.CardLayout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.IdleChart;
import railwitness.logger.reporting.chart.SessionCharts;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.reporting.findings.SessionFindings;
import railwitness.logger.ui.screen.burnin.BurnInPanel;
import railwitness.logger.ui.screen.chart.ChartView;
import railwitness.logger.ui.screen.readings.ReadingsPanel;
import railwitness.logger.ui.screen.stage.Act;
import railwitness.logger.ui.screen.stage.Stage;
import railwitness.logger.ui.screen.stage.StatusLine;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Filling;
import railwitness.logger.ui.screen.widgets.FlowRow;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.Readable;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** What a session found: figures, limits, verdicts, causes; the curves against the design; where the loss goes. */
public final class FindingsStage implements Stage {
    private static final String FIGURES = "figures";
    private static final String CERTIFICATE = "certificate";
    private static final String READINGS = "readings";
    private static final String BURN_IN = "burnin";

    private final WindowModel desk;
    private final CertificateModel certificate;
    private final CardLayout cards = new CardLayout();
    private final JPanel face = new JPanel(cards);
    private final JPanel halves = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 64,fill][grow 36,fill]"));
    private final ReadingsPanel readings;
    private final BurnInPanel burnIn;
    private final Label title = Label.of("", Type.TITLE);
    private final Label verdict = Label.of("", Type.TITLE);
    private final Label caption = Label.muted("", Type.TEXT);
    private final RuledSheet sheet = new RuledSheet("findings sheet", FindingRows.columns());
    private final CausesPanel causes = new CausesPanel();
    private final ChartView rails = new ChartView("rails chart");
    private final ChartView efficiency = new ChartView("efficiency chart");
    private final ChartView idle = new ChartView("idle chart");
    private final WoundPanel windings = new WoundPanel();
    private final LossBar losses = new LossBar();
    private final PlainPanel plain = new PlainPanel();
    private final Note empty = Note.muted(Words.of("findings.empty"), Type.TEXT);
    private final BudgetPanel budget = new BudgetPanel();
    private FindingRows rows = new FindingRows(List.of(), List.of());
    private WindowModel.OpenSession shown;
    private boolean reading;
    private boolean burning;

    /** What is worked out behind the desk before it is shown. */
    private record Worked(FindingRows rows, Optional<Chart> rails, Optional<Chart> efficiency, Optional<Chart> idle) {}

    public FindingsStage(WindowModel desk) {
        this.desk = desk;
        this.certificate = new CertificateModel(desk, this::turned);
        verdict.setName("verdict");
        halves.add(Scroll.of(new Filling(left())), "grow, push, w 64%!, hmin 0");
        halves.add(right(), "grow, push, w 36%!, hmin 0");
        readings = new ReadingsPanel(desk::message);
        face.add(halves, FIGURES);
        face.add(certificate.face(), CERTIFICATE);
        face.add(readings.face(), READINGS);
        burnIn = new BurnInPanel(desk);
        face.add(burnIn.face(), BURN_IN);
        sheet.onMoved(this::about).onChosen(this::about);
    }

    private JComponent left() {
        Sheet left = new Sheet(
                new MigLayout(
                        "insets 14 20 10 20, gap 0, fill, wrap 1, hidemode 3",
                        "[grow,fill]",
                        "[][]8[]12[150::,grow,fill]12[]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(new FlowRow(10, title, verdict), "growx, wmin 0");
        left.add(caption, "wmin 0");
        left.add(plain, "growx, wmin 0");
        left.add(Scroll.of(sheet), "grow, push");
        left.add(causes, "growx, wmin 0");
        return left;
    }

    private JComponent right() {
        Sheet right = new Sheet(new MigLayout("insets 14 18 8 8, fill"), Palette::paper);
        Readable column =
                new Readable(new MigLayout("insets 4 6 4 10, gap 0 16, wrap 1, fillx, hidemode 3", "[grow,fill]"));
        column.setName("findings pictures");
        column.reachable(Words.of("findings.pictures"));
        column.add(budget, "growx, wmin 60");
        column.add(empty, "growx, wmin 60");
        column.add(windings, "growx, wmin 60");
        column.add(idle, "growx, h 210!");
        column.add(rails, "growx, h 210!");
        column.add(losses, "growx");
        column.add(efficiency, "growx, h 190!");
        right.add(Scroll.of(column), "grow, push");
        return right;
    }

    @Override
    public String key() {
        return "findings";
    }

    @Override
    public JComponent face() {
        return face;
    }

    @Override
    public Optional<String> closed() {
        if (desk.running()) {
            return Optional.of(Words.of("findings.closed.running"));
        }
        return desk.session().isEmpty() ? Optional.of(Words.of("findings.closed.none")) : Optional.empty();
    }

    @Override
    public void moment() {
        Optional<WindowModel.OpenSession> session = desk.session();
        if (session.isPresent() && session.get() != shown) {
            begin(session.get());
        }
        if (reading) {
            readings.moment();
        }
        if (burning) {
            burnIn.moment();
        }
    }

    /** Its certificate is wanted at once. */
    public void certificate() {
        certificate.open();
    }

    private void turned() {
        cards.show(face, certificate.isOpen() ? CERTIFICATE : FIGURES);
        if (!certificate.isOpen()) {
            sheet.requestFocusInWindow();
        }
    }

    private void begin(WindowModel.OpenSession session) {
        shown = session;
        if (reading || burning) {
            toFigures();
        }
        certificate.session(session);
        SessionFindings found = session.findings();
        head(found);
        rows = new FindingRows(List.of(), List.of());
        sheet.rows(List.of());
        budget.setVisible(false);
        desk.work(
                () -> {
                    SessionCharts charts = new SessionCharts(found);
                    return new Worked(
                            FindingRows.of(FigureRow.judgedFirst(found.findings())),
                            charts.railsAgainstLoad(),
                            charts.efficiencyAgainstLoad(),
                            IdleChart.of(found));
                },
                worked -> {
                    if (shown == session) {
                        show(found, worked);
                    }
                },
                desk::message);
    }

    private void head(SessionFindings found) {
        title.setText(FindingsTitle.title(found));
        Fitness fitness = found.findings().verdict();
        verdict.setText("\u2014  " + Words.of("fitness." + fitness.name()));
        boolean fault =
                fitness == Fitness.NOT_FIT || !found.findings().contradictions().isEmpty();
        verdict.colour(fault ? Palette::fault : Palette::ink);
        caption.setText(FindingsTitle.caption(found));
        plain.show(found);
    }

    private void show(SessionFindings found, Worked worked) {
        rows = worked.rows();
        sheet.rows(rows.rows());
        causes.show(found.findings().contradictions(), found.findings().causes(), FindingsTitle.ending(found));
        rails.show(worked.rails());
        efficiency.show(worked.efficiency());
        losses.show(found);
        idle.show(worked.idle());
        windings.show(found);
        empty.setVisible(worked.rails().isEmpty() && found.wound().isEmpty());
        halves.revalidate();
        sheet.reveal(0);
    }

    @Override
    public List<String> topics() {
        int at = sheet.selected();
        Optional<FigureRow> row = at < 0 || at >= rows.findings().size()
                ? Optional.empty()
                : rows.findings().get(at);
        List<String> topics = new ArrayList<>();
        row.ifPresent(of -> topics.add("figure-" + of.name().word().replace(' ', '-')));
        topics.add("stage-findings");
        return topics;
    }

    private void about(int row) {
        rows.findings().get(row).ifPresent(budget::show);
    }

    @Override
    public StatusLine line() {
        if (shown == null) {
            return StatusLine.of("", "");
        }
        if (reading) {
            return StatusLine.of(
                    Words.of("readings.line"),
                    Words.of("readings.line.next"),
                    new Act(FIGURES, Words.of("act.figures"), "control R", true, this::toFigures));
        }
        if (burning) {
            return StatusLine.of(
                    Words.of("burnin.line"),
                    Words.of("burnin.line.next"),
                    new Act(FIGURES, Words.of("act.figures"), "control B", true, this::toFigures));
        }
        StatusLine line =
                certificate.line(rows.findings().isEmpty() ? Words.of("findings.working") : Words.of("findings.line"));
        if (certificate.isOpen()) {
            return line;
        }
        List<Act> acts = new ArrayList<>(line.acts());
        acts.add(0, new Act(READINGS, Words.of("act.readings"), "control R", false, this::toReadings));
        if (shown.findings().findings().soak().isPresent()) {
            acts.add(0, new Act(BURN_IN, Words.of("act.burnin"), "control B", false, this::toBurnIn));
        }
        return new StatusLine(line.head(), line.caption(), line.progress(), acts);
    }

    /** Every reading, in place of the figures. */
    public void toReadings() {
        reading = true;
        cards.show(face, READINGS);
        readings.open(shown.file(), FindingsTitle.title(shown.findings()));
        readings.focus();
    }

    /** The hold, in place of the figures. */
    public void toBurnIn() {
        burning = true;
        burnIn.open(Optional.of(shown.file()));
        burnIn.moment();
        cards.show(face, BURN_IN);
    }

    private void toFigures() {
        if (reading) {
            readings.close();
        }
        reading = false;
        burning = false;
        cards.show(face, FIGURES);
        sheet.requestFocusInWindow();
    }

    /** The readings, for whoever waits until they are drawn. */
    public ReadingsPanel readings() {
        return readings;
    }

    static long count(List<Verdict> verdicts, Outcome outcome) {
        return verdicts.stream().filter(one -> one.outcome() == outcome).count();
    }
}
