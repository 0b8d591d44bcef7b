package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.record.BriefingMaker;
import railwitness.logger.recording.sheet.DesignReader;
import railwitness.logger.recording.sheet.PlanReader;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.safety.caution.Caution;

/** What happened, probable causes, cautions, and what ties the paper to its session. */
final class RecordPages {
    private static final int MOST_INCIDENTS = 60;

    private final Evidence evidence;
    private final Typesetter type;
    private final Section section;

    RecordPages(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
        this.section = new Section(type);
    }

    void set() {
        incidents();
        if (evidence.order().causes()) {
            causes();
        }
        cautions();
        records();
    }

    private void incidents() {
        section.begin("Deviations and events", 40);
        List<Incidents.Incident> all = new Incidents(evidence).all();
        if (all.isEmpty()) {
            section.paragraph("None: every step of the plan was measured and settled; no trip, no gap, no note.");
        } else {
            Table table = new Table(
                    type,
                    Section.SMALL,
                    1.6f,
                    List.of(Column.numbers("at, s", 9), Column.words("what", 18), Column.words("words", 73)));
            table.head();
            all.stream().limit(MOST_INCIDENTS).forEach(one -> table.row(List.of(one.when(), one.what(), one.text())));
            if (all.size() > MOST_INCIDENTS) {
                section.small("and " + (all.size() - MOST_INCIDENTS) + " more in the session file");
            }
            type.down(4);
        }
        evidence.session().events().stream()
                .filter(event -> event.is(EventKind.OFF))
                .reduce((first, last) -> last)
                .map(EventEntry::text)
                .ifPresent(words -> section.paragraph("After power: " + words + "."));
    }

    private void causes() {
        section.begin("Probable causes", 50);
        List<Cause> causes = evidence.session().findings().causes();
        if (causes.isEmpty()) {
            section.paragraph(
                    evidence.session().findings().against().deviations().isEmpty()
                            ? "None: the readings agree with a sound unit, or do not suffice to name a cause."
                            : "What is off is explained by no known fault.");
        }
        for (Cause cause : causes) {
            section.paragraph(List.of(Span.strong(Wording.cause(cause))));
            cause.supports().forEach(reason -> section.paragraph("For: " + reason));
            cause.against().forEach(reason -> section.paragraph("Against: " + reason));
            section.paragraph("Check next: " + String.join("; then ", cause.checks()));
        }
        section.small("A cause is named by what each fault would do to the figures. It is probable, not proven.");
    }

    private void cautions() {
        section.begin("Cautions", 40);
        evidence.tally()
                .between()
                .ifPresent(standing -> section.paragraph(String.format(
                        Locale.ROOT,
                        "Highest voltage that stood between the outermost of rails and 0 V: %.1f V, about %.0f s into the"
                                + " session (highest less lowest reading within the same few seconds).",
                        standing.volts(),
                        standing.seconds())));
        Optional<Sheets> sheets = sheets();
        if (sheets.isEmpty()) {
            section.paragraph(Wording.caution(evidence));
            return;
        }
        BriefingMaker.of(sheets.get()).cautions().forEach(this::caution);
    }

    private void caution(Caution caution) {
        String sentence = caution.sentence();
        int word = sentence.indexOf(':') + 1;
        section.paragraph(List.of(Span.strong(sentence.substring(0, word)), Span.plain(sentence.substring(word))));
    }

    /** The three sheets, where the session has them all and they can still be read. */
    private Optional<Sheets> sheets() {
        Optional<SheetEntry> plan = sheet("plan");
        if (plan.isEmpty() || sheet("design").isEmpty() || sheet("bench").isEmpty()) {
            return Optional.empty();
        }
        try {
            SheetText<Plan> planText = SheetText.of("plan", of(plan.get()), PlanReader::plan);
            return Optional.of(new Sheets(
                    SheetText.of("design", of(sheet("design").get()), DesignReader::design),
                    SheetText.of("bench", of(sheet("bench").get()), BenchSheet::from),
                    planText));
        } catch (SheetException e) {
            return Optional.empty();
        }
    }

    private static Sheet of(SheetEntry entry) {
        return Sheet.of(entry.fileName(), entry.text());
    }

    private Optional<SheetEntry> sheet(String kind) {
        return evidence.sheets().stream()
                .filter(sheet -> sheet.kind().equals(kind))
                .reduce((first, last) -> last);
    }

    private void records() {
        section.begin("Records", 60);
        List<String> lines = new ArrayList<>();
        lines.add("Session " + evidence.session().head().id() + " in the file " + evidence.fileName() + ", recorded by"
                + " railwitness " + evidence.session().head().programVersion() + ". It holds every reading, event,"
                + " exchange and the sheets word for word"
                + (evidence.sheets().isEmpty() ? "." : ": " + names() + "."));
        lines.add("The digest at the foot of every page is the last link of a SHA-256 chain over all that was recorded."
                + " The command 'verify' with the session and this file says whether both still belong together.");
        lines.add(
                evidence.verified()
                        ? "For this certificate the chain was worked out again and the session found as it was recorded."
                        : "The session is long; its chain was not worked out again for this certificate.");
        evidence.earlier()
                .ifPresent(earlier -> lines.add("This is the retest of " + earlier.words()
                        + ", whose session carries the" + " digest " + Digest.grouped(earlier.seal()) + "."));
        String who = evidence.session().head().acknowledgedBy();
        lines.add(
                who.isEmpty()
                        ? "Nobody was asked to acknowledge cautions and checklist."
                        : "Cautions and checklist were acknowledged by " + who + ".");
        lines.forEach(section::paragraph);
        type.down(4);
        section.small("End of certificate");
    }

    private String names() {
        return String.join(
                ", ",
                evidence.sheets().stream()
                        .map(sheet -> sheet.kind() + " sheet " + sheet.fileName())
                        .toList());
    }
}
