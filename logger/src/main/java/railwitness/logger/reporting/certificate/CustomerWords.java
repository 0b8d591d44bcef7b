package railwitness.logger.reporting.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Outcome;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.reporting.findings.FigureRow;

/** In two or three sentences, for whoever gets the unit back: what was wrong, what was done, how it is now. */
final class CustomerWords {
    private static final int MOST_NAMED = 2;

    private final Evidence evidence;
    private final Findings findings;

    CustomerWords(Evidence evidence) {
        this.evidence = evidence;
        this.findings = evidence.session().findings();
    }

    String text() {
        List<String> sentences = new ArrayList<>();
        before().ifPresent(sentences::add);
        done().ifPresent(sentences::add);
        sentences.add(now());
        return Typography.of(String.join(" ", sentences));
    }

    private Optional<String> before() {
        return evidence.earlier().map(earlier -> {
            List<FigureRow> failed = FigureRow.judged(findings).stream()
                    .filter(row -> earlier.figures()
                            .of(row)
                            .filter(found -> found.verdict().endsWith("fail"))
                            .isPresent())
                    .toList();
            if (failed.isEmpty()) {
                return earlier.figures().judged() > 0
                        ? "As found it met what was asked of it."
                        : "What it was like as found was not judged.";
            }
            return "As found, "
                    + named(
                            failed,
                            row -> earlier.figures().of(row).orElseThrow().shown()) + ".";
        });
    }

    /** Such as "the load effect of the minus rail was 6.72 V, at most 6 V being allowed". */
    private static String named(List<FigureRow> rows, java.util.function.Function<FigureRow, String> value) {
        String told = rows.stream()
                .limit(MOST_NAMED)
                .map(row -> told(row) + " " + behind(value.apply(row), row) + ", " + limit(row) + " being allowed")
                .collect(Collectors.joining("; "));
        int more = rows.size() - MOST_NAMED;
        return told + (more > 0 ? "; and " + more + " more " + (more == 1 ? "was" : "were") + " not as asked" : "");
    }

    private static String told(FigureRow row) {
        return "the "
                + (row.name().word().endsWith(" differ by")
                        ? row.name().word().replace(" differ by", " differed by")
                        : row.name().word()
                                + row.rail()
                                        .map(rail -> " of the " + rail + " rail")
                                        .orElse("")
                                + " was");
    }

    private static String behind(String number, FigureRow row) {
        return row.unit().symbol().isEmpty()
                ? number
                : number + " " + row.unit().symbol();
    }

    private static String limit(FigureRow row) {
        String limit = row.limitText();
        String words = limit.startsWith("<= ")
                ? "at most " + limit.substring(3)
                : limit.startsWith(">= ") ? "at least " + limit.substring(3) : limit;
        return behind(words, row);
    }

    private Optional<String> done() {
        return evidence.session()
                .design()
                .flatMap(design -> design.unit().workDone())
                .map(String::strip)
                .filter(work -> !work.isEmpty())
                .map(work -> "Work done: " + work + (work.endsWith(".") ? "" : "."));
    }

    private String now() {
        if (evidence.session().state() == SessionState.TRIPPED
                || evidence.session().state() == SessionState.INTERRUPTED) {
            return "The test did not come to its end; what was measured until then stands below.";
        }
        if (!findings.contradictions().isEmpty()) {
            return "Readings of this test cannot all be true, so what rests on them is not judged: "
                    + findings.contradictions().get(0).text() + ".";
        }
        List<FigureRow> judged = FigureRow.judged(findings);
        if (judged.isEmpty()) {
            return "Nothing was asked of it, so nothing is judged; what was measured stands below.";
        }
        List<FigureRow> failed = judged.stream().filter(FigureRow::unfit).toList();
        if (!failed.isEmpty()) {
            return (evidence.earlier().isPresent() ? "Now " : "In this test ") + named(failed, FigureRow::valueText)
                    + ".";
        }
        long open = judged.stream()
                .filter(row -> row.outcome().equals(Optional.of(Outcome.NOT_JUDGED)))
                .count();
        if (findings.verdict() != Fitness.FIT || open > 0) {
            return "What could be judged was as asked; " + open + " of " + judged.size()
                    + " requirements could not be judged.";
        }
        return (evidence.earlier().isPresent() ? "It now meets all " : "It meets all ") + judged.size()
                + " requirements that were put to it.";
    }
}
