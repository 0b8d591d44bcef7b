package railwitness.safety.caution;

import java.util.List;

/** All cautions and the checklist as a text to read, without a unit's numbers. */
public final class CautionsText {
    private CautionsText() {}

    /** Markdown; the same sentences as the program shows. */
    public static String text() {
        StringBuilder text = new StringBuilder("# Cautions\n\n");
        text.append(
                "What the program says before power, for reading at leisure. The numbers of a unit are added when it"
                        + " is tested.\n\n## Signal words (after ANSI Z535)\n\n");
        for (SignalWord word : SignalWord.values()) {
            text.append("- **")
                    .append(word)
                    .append("**: ")
                    .append(word.meaning())
                    .append("\n");
        }
        text.append("\n## Cautions\n\n");
        for (Topic topic : Topic.values()) {
            text.append("### ")
                    .append(topic.title())
                    .append("\n\nGiven ")
                    .append(topic.when())
                    .append(".\n\n");
            text.append(topic.text()).append("\n\n");
        }
        text.append("## Thresholds and their sources\n\n| value | source |\n|---|---|\n");
        for (Threshold one : Threshold.values()) {
            text.append("| ").append(Cautions.number(one.value(), one.unit()));
            text.append(" | ").append(one.source()).append(" |\n");
        }
        text.append("\n## Checklist of every run\n\n");
        checks(text, Checklist.ALWAYS);
        text.append("\nThen, with the unit disconnected and discharged, the cold resistances that can be taken, each"
                + " judged against the design sheet:\n\n");
        List<Check> all = Checklist.of(1, 2, 1, List.of("plus", "minus"), 1).checks();
        checks(text, all.subList(Checklist.ALWAYS.size(), all.size()));
        return text.toString();
    }

    private static void checks(StringBuilder text, List<Check> checks) {
        checks.forEach(check -> text.append("- [ ] ").append(check.text()).append("\n"));
    }
}
