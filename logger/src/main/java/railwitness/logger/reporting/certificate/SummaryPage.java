package railwitness.logger.reporting.certificate;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.cause.Explained;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.design.Design;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.reporting.chart.Chart;
import railwitness.logger.reporting.chart.SessionCharts;
import railwitness.logger.reporting.findings.FigureRow;
import railwitness.logger.reporting.findings.PlainWords;

/** The first page: what was tested, the verdict, every requirement, two pictures, what was odd, places to sign. */
final class SummaryPage {
    private static final float TEXT = 9;
    private static final float TITLE = 17;
    private static final float VERDICT = 15;
    private static final float SIGN_HEIGHT = 40;
    private static final float TIGHT_PADDING = 1.2f;
    private static final float LOOSE_PADDING = 2.8f;

    private final Evidence evidence;
    private final Typesetter type;

    private static final int MOST_CONTRADICTIONS = 3;

    SummaryPage(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
    }

    void set() {
        type.newPage();
        title();
        verdict();
        contradictions();
        plainWords();
        facts();
        type.down(12);
        List<Paragraph> remarks = remarks();
        float below = SIGN_HEIGHT + 14;
        for (Paragraph remark : remarks) {
            below += remark.height() + 5;
        }
        List<Chart> charts = charts();
        float pictures = charts.isEmpty() ? 0 : pictureHeight(below);
        figures(below + pictures + (charts.isEmpty() ? 0 : 18));
        if (!charts.isEmpty()) {
            type.down(12);
            new Pictures(type).row(charts, pictures);
            type.down(6);
        }
        type.down(4);
        for (Paragraph remark : remarks) {
            remark.at(type, type.left(), type.y());
            type.down(remark.height() + 5);
        }
        signatures();
    }

    private void title() {
        SessionHead head = evidence.session().head();
        float line = type.y() + TITLE;
        type.text("Test certificate", Face.MEDIUM, TITLE, Tone.INK, type.left(), line);
        type.textRight(
                type.faces().clipped(type.faces().clean("No. " + head.id()), Face.MEDIUM, 12, type.width() * 0.6f),
                Face.MEDIUM,
                12,
                Tone.INK,
                type.right(),
                line - 3);
        type.text(
                head.rehearsal()
                        ? "rehearsal on the virtual bench: no real unit was tested"
                        : "step-up supply, load and line test",
                Face.REGULAR,
                TEXT,
                Tone.MUTED,
                type.left(),
                line + 14);
        type.textRight(
                "issued " + Dates.day(evidence.order().issued(), head.zone()),
                Face.REGULAR,
                TEXT,
                Tone.MUTED,
                type.right(),
                line + 14);
        type.moveTo(line + 24);
        type.rule(type.left(), type.right(), type.y(), 1, Tone.INK);
    }

    private void verdict() {
        Fitness fitness = evidence.session().findings().verdict();
        String words =
                switch (fitness) {
                    case FIT -> "Fit to return";
                    case NOT_FIT -> "Not fit to return";
                    case NOT_JUDGED -> "Not judged";
                };
        type.down(12);
        float line = type.y() + VERDICT;
        boolean fault = fitness == Fitness.NOT_FIT
                || !evidence.session().findings().contradictions().isEmpty();
        type.text(words, Face.MEDIUM, VERDICT, fault ? Tone.FAULT : Tone.INK, type.left(), line);
        type.textRight(count(), Face.REGULAR, TEXT, Tone.MUTED, type.right(), line);
        type.moveTo(line + 12);
    }

    /** Readings that cannot all be true stand before everything that was worked out from them. */
    private void contradictions() {
        List<Contradiction> against = evidence.session().findings().contradictions();
        against.stream()
                .limit(MOST_CONTRADICTIONS)
                .forEach(one -> warning(one.text() + ". Check: " + one.check() + "."));
        if (against.size() > MOST_CONTRADICTIONS) {
            warning("and " + (against.size() - MOST_CONTRADICTIONS) + " more contradictions");
        }
    }

    /** What is off and by how much, as one would tell a colleague. */
    private void plainWords() {
        PlainWords words = PlainWords.of(evidence.session());
        boolean unexplained = evidence.session().findings().against().explained() == Explained.NO_KNOWN_FAULT;
        String text = words.off() + (unexplained && evidence.order().causes() ? " " + words.why() : "");
        Paragraph paragraph = Paragraph.of(type.faces(), TEXT, type.width(), Typography.of(text))
                .atMost(5);
        paragraph.at(type, type.left(), type.y());
        type.down(paragraph.height() + 4);
    }

    private void warning(String words) {
        Paragraph paragraph = Paragraph.of(
                type.faces(),
                TEXT,
                type.width(),
                List.of(new Span("Contradiction: " + words, Face.REGULAR, Tone.FAULT)));
        paragraph.at(type, type.left(), type.y());
        type.down(paragraph.height() + 4);
    }

    private String count() {
        List<Verdict> verdicts = evidence.session().findings().verdicts();
        if (verdicts.isEmpty()) {
            return "no requirements were stated";
        }
        long met = verdicts.stream()
                .filter(one -> one.outcome() == Outcome.PASS || one.outcome() == Outcome.CONDITIONAL_PASS)
                .count();
        long conditional = verdicts.stream()
                .filter(one -> one.outcome() == Outcome.CONDITIONAL_PASS)
                .count();
        return met + " of " + verdicts.size() + " requirements met"
                + (conditional == 0 ? "" : ", " + conditional + " conditionally") + " \u00b7 "
                + Wording.ruleInShort(verdicts.get(0).rule());
    }

    private void facts() {
        SessionHead head = evidence.session().head();
        Optional<Design> design = evidence.session().design();
        Facts facts = new Facts(type, TEXT);
        facts.add("Unit", evidence.unit(), "Condition", condition());
        facts.add(
                "Design",
                design.map(Wording::design).orElse("no design sheet"),
                "Ambient",
                evidence.session().bench().map(SummaryPage::ambient).orElse("not stated"));
        facts.add(
                "Input",
                Wording.input(evidence),
                "Switching",
                design.map(Wording::switching).orElse("not stated"));
        facts.add("Tested", tested(head.startedWall(), head.zone()), "Method", "settled by slope; definitions inside");
        facts.add(
                "Workshop",
                evidence.order().workshop().orElse("not stated"),
                "Before",
                evidence.earlier().map(Earlier::words).orElse("no earlier test cited"));
        evidence.order().customer().ifPresent(customer -> facts.add("Customer", customer, "", ""));
        facts.set();
    }

    private static String ambient(BenchSheet bench) {
        return Wording.number(bench.ambientDegC()) + " \u00b0C, as stated on the bench sheet";
    }

    private String condition() {
        String condition = evidence.session().head().unitCondition();
        String done = evidence.session()
                .design()
                .flatMap(design -> design.unit().workDone())
                .map(work -> ": " + work)
                .orElse("");
        return (condition.isEmpty() ? "not stated" : condition) + done;
    }

    private String tested(Instant start, ZoneId zone) {
        Instant end = start.plusNanos(evidence.session().endedNanos());
        return Dates.minute(start, zone) + " to " + Dates.until(start, end, zone) + ", "
                + evidence.session().state().word();
    }

    private List<Chart> charts() {
        SessionCharts charts = new SessionCharts(evidence.session());
        List<Chart> both = new ArrayList<>();
        charts.railsAgainstLoad().ifPresent(both::add);
        charts.efficiencyAgainstLoad().ifPresent(both::add);
        return both;
    }

    /** What the tables leave, between a least and a most that look right. */
    private float pictureHeight(float below) {
        float rows = Math.min(rows().size(), 14) + 1;
        float left = type.room() - below - 18 - rows * (TEXT * 1.36f + 2 * LOOSE_PADDING);
        return Math.max(100, Math.min(175, left));
    }

    private List<FigureRow> rows() {
        List<FigureRow> rows = FigureRow.judged(evidence.session().findings());
        return rows.isEmpty() ? FigureRow.found(evidence.session().findings()) : rows;
    }

    /** As many rows as there is room for; where not all fit, the worst stand first and the rest is counted. */
    private void figures(float keep) {
        List<FigureRow> rows = rows();
        if (rows.isEmpty()) {
            Paragraph.of(type.faces(), TEXT, type.width(), "No figure could be worked out: no step was measured.")
                    .flow(type, type.left());
            return;
        }
        float room = type.room() - keep;
        float loose = TEXT * 1.36f + 2 * LOOSE_PADDING;
        float tight = TEXT * 1.36f + 2 * TIGHT_PADDING;
        float padding = (rows.size() + 1) * loose <= room
                ? LOOSE_PADDING
                : Math.max(TIGHT_PADDING, (room / (rows.size() + 1) - TEXT * 1.36f) / 2);
        int fit = (int) (room / tight) - 2;
        boolean all = (rows.size() + 1) * tight <= room;
        List<FigureRow> shown = all
                ? rows
                : rows.stream()
                        .sorted(Comparator.comparing(SummaryPage::badness))
                        .limit(Math.max(1, fit))
                        .toList();
        Table table = new Table(type, TEXT, padding, FigureList.COLUMNS);
        table.head();
        shown.forEach(row -> table.spans(FigureList.oneLine(row, type), ""));
        if (!all) {
            Paragraph.of(
                            type.faces(),
                            TEXT,
                            type.width(),
                            List.of(Span.muted(String.format(
                                    Locale.ROOT,
                                    "and %d more, none worse than these; all stand on the next pages",
                                    rows.size() - shown.size()))))
                    .flow(type, type.left());
        }
    }

    private static int badness(FigureRow row) {
        return -row.outcome().map(Outcome::ordinal).orElse(-1);
    }

    private List<Paragraph> remarks() {
        List<Span> first = new ArrayList<>();
        first.add(Span.strong("Connected throughout. "));
        first.add(Span.plain(evidence.session()
                .design()
                .map(Design::connected)
                .filter(items -> !items.isEmpty())
                .map(items -> String.join(", ", items) + ". ")
                .orElse("Not stated. ")));
        first.add(Span.strong("Events. "));
        first.add(Span.plain(new Incidents(evidence).inShort()));
        List<Paragraph> remarks = new ArrayList<>();
        remarks.add(Paragraph.of(type.faces(), TEXT, type.width(), first).atMost(5));
        if (evidence.order().causes()) {
            Wording.likeliest(evidence)
                    .ifPresent(words -> remarks.add(Paragraph.of(
                                    type.faces(),
                                    TEXT,
                                    type.width(),
                                    List.of(Span.strong("Probable cause. "), Span.plain(words)))
                            .atMost(3)));
        }
        remarks.add(Paragraph.of(
                        type.faces(),
                        TEXT,
                        type.width(),
                        List.of(Span.strong("Caution. "), Span.plain(Wording.caution(evidence))))
                .atMost(4));
        return remarks;
    }

    private void signatures() {
        float line = Math.min(type.y() + SIGN_HEIGHT - 12, type.bottom() - 14);
        float gap = 22;
        float width = (type.width() - 2 * gap) / 3;
        String name = evidence.session().head().acknowledgedBy();
        String[] below = {"tested", "approved", "place, date"};
        for (int i = 0; i < below.length; i++) {
            float x = type.left() + i * (width + gap);
            type.rule(x, x + width, line, 0.8f, Tone.INK);
            type.text(below[i], Face.REGULAR, TEXT, Tone.MUTED, x, line + 11);
        }
        if (!name.isEmpty()) {
            String clean = type.faces().clean(name);
            type.text(
                    type.faces().clipped(clean, Face.REGULAR, TEXT, width),
                    Face.REGULAR,
                    TEXT,
                    Tone.INK,
                    type.left(),
                    line - 4);
        }
        type.moveTo(line + 14);
    }
}
