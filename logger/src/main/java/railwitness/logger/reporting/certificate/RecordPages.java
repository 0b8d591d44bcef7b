package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.analysis.cause.Cause;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.store.EventEntry;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SheetEntry;

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
        identification();
        incidents();
        if (evidence.order().causes()) {
            causes();
        }
        cautions();
        records();
    }

    /** What did not stand whole on the first page, and what is stated of laboratory and customer. */
    private void identification() {
        SessionHead head = evidence.session().head();
        section.begin("Identification", 90);
        Table table =
                new Table(type, Section.SMALL, 1.6f, List.of(Column.words("what", 20), Column.words("as stated", 80)));
        table.head();
        table.row(List.of("Unit", head.unitName()));
        table.row(List.of("Serial", head.unitSerial().isEmpty() ? "not stated" : head.unitSerial()));
        table.row(List.of("Session", head.id()));
        table.row(List.of("Condition", head.unitCondition().isEmpty() ? "not stated" : head.unitCondition()));
        table.row(List.of(
                "Work done",
                evidence.session()
                        .design()
                        .flatMap(design -> design.unit().workDone())
                        .orElse("not stated")));
        for (Particular what : Particular.values()) {
            if (what != Particular.SPECIFICATION) {
                table.row(List.of(
                        what.label(),
                        what == Particular.AMBIENT
                                ? FirstFacts.ambient(evidence)
                                : evidence.order().stated().words(what)));
            }
        }
        table.row(List.of(Particular.SPECIFICATION.label(), specification()));
        type.down(4);
        section.small("Sampling: none; the one unit above was tested as it was given. Where something is 'not stated',"
                + " nobody stated it; laboratory and customer answer for what they stated.");
    }

    private String specification() {
        String sheet = sheet("design")
                .map(one -> "design sheet " + one.fileName() + ", SHA-256 "
                        + Digest.of(one.text()).substring(0, 16) + "\u2026")
                .orElse("no design sheet");
        return evidence.order()
                .stated()
                .of(Particular.SPECIFICATION)
                .map(stated -> stated + "; " + sheet)
                .orElse(sheet);
    }

    private void incidents() {
        section.begin("Deviations and events", 40);
        List<Incidents.Incident> all = new Incidents(evidence).all();
        if (all.isEmpty()) {
            section.paragraph(
                    evidence.wasRun()
                            ? "None: every step of the plan was measured and settled; no trip, no gap, no note."
                            : "Not known: the readings were brought in, and what happened when they were taken is not in"
                                    + " them.");
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
        section.paragraph(Wording.caution(evidence)
                + " Work on the open unit is for people trained for it. What the operator was warned of before power stands"
                + " in the session.");
    }

    private Optional<SheetEntry> sheet(String kind) {
        return evidence.sheets().stream()
                .filter(sheet -> sheet.kind().equals(kind))
                .reduce((first, last) -> last);
    }

    private void records() {
        section.begin("Records", 190);
        List<String> lines = new ArrayList<>();
        lines.add("Session " + evidence.session().head().id() + " in the file " + evidence.fileName() + ", recorded by"
                + " railwitness " + evidence.session().head().programVersion() + ". It holds every reading, event,"
                + " exchange and the sheets word for word"
                + (evidence.sheets().isEmpty() ? "." : ": " + names() + "."));
        evidence.imported()
                .ifPresent(from -> lines.add("It is a session of its own: " + from
                        + ". Nothing of it was recorded by this" + " program when the unit was tested."));
        evidence.issue().replaces().ifPresent(replaced -> {
            lines.add("This issue replaces " + replaced + ". Do not use that one any more. What is not as it was:");
            evidence.issue().changes().forEach(change -> lines.add("\u2013 " + change));
        });
        evidence.sheets()
                .forEach(sheet -> lines.add("SHA-256 of the " + sheet.kind() + " sheet " + sheet.fileName() + ": "
                        + Digest.grouped(Digest.of(sheet.text()))));
        lines.add("This certificate was made by railwitness " + ProgramBuild.text() + ".");
        lines.add("The digest at the foot of every page is the last link of a SHA-256 chain over all that was recorded."
                + " The command 'verify' with the session and this file says whether both still belong together.");
        lines.add(
                evidence.verified()
                        ? "For this certificate the chain was worked out again and the session found as it was recorded."
                        : "The session is so long that working its chain out takes over a minute; that was not done for"
                                + " this certificate.");
        evidence.earlier()
                .ifPresent(earlier -> lines.add("This is the retest of " + earlier.words()
                        + ", whose session carries the" + " digest " + Digest.grouped(earlier.seal()) + "."));
        String who = evidence.session().head().acknowledgedBy();
        lines.add(
                who.isEmpty()
                        ? evidence.wasRun()
                                ? "Nobody was asked to acknowledge cautions and checklist."
                                : "Whether cautions and checklist were acknowledged is not known."
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
