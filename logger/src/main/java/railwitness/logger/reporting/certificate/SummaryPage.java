package railwitness.logger.reporting.certificate;

import java.util.List;
import railwitness.analysis.verdict.Outcome;
import railwitness.analysis.verdict.Verdict;
import railwitness.logger.recording.store.SessionHead;

/** The first page, for whoever gets the unit back: two sentences, the verdict, every requirement with its strip. */
final class SummaryPage {
    private static final float TEXT = 9;
    private static final float TITLE = 17;
    private static final float VERDICT = 18;
    private static final float SENTENCES = 12;
    private static final float SIGN_HEIGHT = 44;
    private static final float LOGO = 34;

    private final Evidence evidence;
    private final Typesetter type;

    SummaryPage(Evidence evidence, Typesetter type) {
        this.evidence = evidence;
        this.type = type;
    }

    void set() {
        type.newPage();
        letterhead();
        title();
        rehearsal();
        sentences();
        verdict();
        FirstFacts first = new FirstFacts(evidence);
        Facts facts = new Facts(type, 8);
        List<Fact> unit = first.unit();
        List<Fact> test = first.test();
        Paragraph caution = caution();
        float below =
                12 + facts.height(unit, test) + caution.height() + 8 + SIGN_HEIGHT + PageFurniture.FIRST_FOOT_MORE;
        new RequirementTable(evidence, type).set(below);
        type.down(10);
        facts.set("What was tested", unit, "How it was tested", test);
        type.down(5);
        caution.at(type, type.left(), type.y());
        type.down(caution.height());
        signatures();
    }

    private void letterhead() {
        evidence.order().letterhead().ifPresent(head -> {
            float[] x = {type.left()};
            float top = type.y() - 14;
            head.logo().ifPresent(logo -> {
                float width = Math.min(type.width() / 2, LOGO * logo.getWidth() / logo.getHeight());
                float height = Math.min(LOGO, width * logo.getHeight() / logo.getWidth());
                type.image(logo, "the workshop's logo", x[0], top, width, height);
                x[0] += width + 10;
            });
            if (!head.text().isEmpty()) {
                Paragraph.of(type.faces(), TEXT, type.right() - x[0], List.of(Span.muted(head.text())))
                        .atMost(2)
                        .at(type, x[0], top + 6);
            }
            type.down(LOGO - 8);
        });
    }

    private void title() {
        SessionHead head = evidence.session().head();
        float line = type.y() + TITLE;
        type.heading(
                "H1",
                "Test certificate",
                () -> type.text("Test certificate", Face.MEDIUM, TITLE, Tone.INK, type.left(), line));
        String number =
                "No. " + evidence.number() + ", issue " + evidence.issue().number();
        float size = 12;
        while (size > 8 && type.faces().width(type.faces().clean(number), Face.MEDIUM, size) > type.width() * 0.68f) {
            size -= 0.5f;
        }
        type.textRight(
                type.faces().clipped(type.faces().clean(number), Face.MEDIUM, size, type.width() * 0.72f),
                Face.MEDIUM,
                size,
                Tone.INK,
                type.right(),
                line - 2);
        String condition = head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition();
        type.text(
                "step-up supply of a sound system"
                        + (evidence.wasRun() ? ", load and line test" : ", readings brought in") + condition,
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
        type.moveTo(line + 22);
        type.rule(type.left(), type.right(), type.y(), 0.8f, Tone.INK);
        evidence.issue().replaces().ifPresent(replaced -> {
            type.down(4);
            Paragraph words = Paragraph.of(
                            type.faces(),
                            8,
                            type.width(),
                            "Replaces " + replaced + ". Changed: "
                                    + String.join("; ", evidence.issue().changes()) + ".")
                    .atMost(4, "\u2026 all under 'Records'");
            words.at(type, type.left(), type.y());
            type.down(words.height() + 1);
            type.rule(type.left(), type.right(), type.y(), 0.5f, Tone.STRONG_RULE);
        });
    }

    private void rehearsal() {
        if (evidence.rehearsal()) {
            float line = type.y() + 13;
            type.text(
                    "Rehearsal: made on the virtual bench, no real unit was tested.",
                    Face.ITALIC,
                    TEXT,
                    Tone.INK,
                    type.left(),
                    line);
            type.textRight("Not to be given to a customer.", Face.ITALIC, TEXT, Tone.INK, type.right(), line);
            type.moveTo(line + 7);
            type.rule(type.left(), type.right(), type.y(), 0.8f, Tone.INK);
        }
    }

    private void sentences() {
        type.down(9);
        Paragraph words = Paragraph.of(type.faces(), SENTENCES, type.width(), new CustomerWords(evidence).text())
                .atMost(6, "\u2026 (more inside)");
        words.at(type, type.left(), type.y());
        type.down(words.height());
    }

    private void verdict() {
        Headline headline = evidence.headline();
        type.down(7);
        float line = type.y() + VERDICT;
        type.part(
                "H2",
                () -> type.text(
                        headline.words(),
                        Face.MEDIUM,
                        VERDICT,
                        headline.fault() ? Tone.FAULT : Tone.INK,
                        type.left(),
                        line));
        type.moveTo(line + 4);
        if (!headline.more().isEmpty()) {
            Paragraph more = Paragraph.of(
                            type.faces(),
                            TEXT + 1,
                            type.width(),
                            List.of(new Span(headline.more(), Face.REGULAR, headline.fault() ? Tone.FAULT : Tone.INK)))
                    .atMost(3);
            more.at(type, type.left(), type.y());
            type.down(more.height());
        }
        Paragraph count = Paragraph.of(type.faces(), TEXT, type.width(), List.of(Span.muted(count())));
        count.at(type, type.left(), type.y());
        type.down(count.height() + 4);
    }

    private String count() {
        List<Verdict> verdicts = evidence.session().findings().verdicts();
        if (verdicts.isEmpty()) {
            return "No requirements were stated.";
        }
        long met = verdicts.stream()
                .filter(one -> one.outcome() == Outcome.PASS || one.outcome() == Outcome.CONDITIONAL_PASS)
                .count();
        long conditional = verdicts.stream()
                .filter(one -> one.outcome() == Outcome.CONDITIONAL_PASS)
                .count();
        String before = evidence.earlier()
                .map(Earlier::figures)
                .filter(figures -> figures.judged() > 0)
                .map(figures -> " As found: " + figures.met() + " of " + figures.judged() + ".")
                .orElse("");
        return met + " of " + verdicts.size() + " requirements met"
                + (conditional == 0 ? "" : ", " + conditional + " conditionally") + "; "
                + Wording.ruleInShort(verdicts.get(0).rule()) + "." + before;
    }

    private Paragraph caution() {
        return Paragraph.of(
                        type.faces(),
                        8,
                        type.width(),
                        List.of(
                                new Span("Caution. ", Face.MEDIUM, Tone.INK),
                                Span.plain(Wording.caution(evidence)),
                                new Span(" Events. ", Face.MEDIUM, Tone.INK),
                                Span.plain(new Incidents(evidence).inShort())))
                .atMost(3, "\u2026 (whole inside)");
    }

    private void signatures() {
        float line = type.bottom() - PageFurniture.FIRST_FOOT_MORE - 14;
        float gap = 22;
        float width = (type.width() - 2 * gap) / 3;
        Particulars stated = evidence.order().stated();
        String authorised = stated.of(Particular.AUTHORISED_BY)
                .map(name -> name
                        + stated.of(Particular.FUNCTION)
                                .map(function -> ", " + function)
                                .orElse(""))
                .orElse("");
        String[] above = {evidence.session().head().acknowledgedBy(), authorised, ""};
        String[] below = {"tested", "authorised", "place, date"};
        for (int i = 0; i < below.length; i++) {
            float x = type.left() + i * (width + gap);
            type.rule(x, x + width, line, 0.8f, Tone.INK);
            type.text(below[i], Face.REGULAR, 8, Tone.MUTED, x, line + 10);
            if (!above[i].isEmpty()) {
                String clean = type.faces().clean(above[i]);
                float size = TEXT;
                while (size > 7.5f && type.faces().width(clean, Face.REGULAR, size) > width) {
                    size -= 0.25f;
                }
                type.text(
                        type.faces().clipped(clean, Face.REGULAR, size, width),
                        Face.REGULAR,
                        size,
                        Tone.INK,
                        x,
                        line - 4);
            }
        }
        type.moveTo(line + 14);
    }
}
