package railwitness.logger.campaign;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.logger.recording.store.SessionState;

/** Endings by trouble, as text; what is wrong is listed under it. */
final class EndingTable {
    private static final int WORDS_SHOWN = 12;

    private EndingTable() {}

    static String of(List<CaseEnding> endings) {
        StringBuilder text = new StringBuilder(
                "| trouble | cases | ran to its end | ended under power | ended before power | off at the far end"
                        + " | still on, person told | told though off | session kept | readings | a round old | foreign | unsafe |\n"
                        + "|---|---|---|---|---|---|---|---|---|---|---|---|---|\n");
        for (Trouble trouble : Trouble.values()) {
            String name = trouble.name().toLowerCase(Locale.ROOT).replace('_', ' ');
            text.append(row(
                    name,
                    endings.stream()
                            .filter(end -> end.what().trouble() == trouble)
                            .toList()));
        }
        text.append(row("all", endings));
        endings.stream().filter(end -> !end.safe()).forEach(end -> text.append(wrong("UNSAFE", end)));
        endings.stream()
                .filter(end -> !end.foreign().isEmpty())
                .forEach(end -> text.append("FOREIGN " + end.what() + " " + end.foreign() + "\n"));
        endings.stream().filter(end -> !end.kept()).forEach(end -> text.append(wrong("NOT KEPT", end)));
        return text.toString();
    }

    private static String wrong(String how, CaseEnding end) {
        List<String> last = end.words()
                .subList(
                        Math.max(0, end.words().size() - WORDS_SHOWN),
                        end.words().size());
        return how + " " + end.what() + " " + end.state() + " " + end.faults() + " ... " + last + "\n";
    }

    private static String row(String name, List<CaseEnding> some) {
        return "| " + name + " | " + some.size()
                + count(some, end -> end.is(SessionState.COMPLETE))
                + count(some, end -> end.is(SessionState.TRIPPED) && end.hadPower())
                + count(some, end -> end.is(SessionState.TRIPPED) && !end.hadPower())
                + count(some, CaseEnding::offAtFarEnd)
                + count(some, end -> !end.offAtFarEnd() && end.told())
                + count(some, end -> end.offAtFarEnd() && end.told())
                + count(some, CaseEnding::kept)
                + " | " + some.stream().mapToLong(CaseEnding::checked).sum()
                + " | " + some.stream().mapToLong(CaseEnding::old).sum()
                + " | " + some.stream().mapToLong(end -> end.foreign().size()).sum()
                + count(some, end -> !end.safe()) + " |\n";
    }

    private static String count(List<CaseEnding> some, Predicate<CaseEnding> which) {
        return " | " + some.stream().filter(which).count();
    }
}
