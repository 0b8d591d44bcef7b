package railwitness.logger.findings;

import java.util.List;
import railwitness.analysis.findings.Findings;
import railwitness.analysis.verdict.Fitness;
import railwitness.analysis.verdict.Verdict;

/** Findings of readings that nobody can vouch for: the figures stand, nothing is judged by them. */
final class Doubted {
    private Doubted() {}

    static Findings of(Findings found, String reason) {
        List<Verdict> verdicts = found.verdicts().stream()
                .map(verdict -> Verdict.notJudged(verdict.requirement(), verdict.rule(), reason))
                .toList();
        return new Findings(
                found.points(),
                found.figures(),
                found.notFound(),
                found.lossSplit(),
                found.sagSplit(),
                found.impliedTurns(),
                found.budgets(),
                verdicts,
                List.of(),
                Fitness.NOT_JUDGED);
    }
}
