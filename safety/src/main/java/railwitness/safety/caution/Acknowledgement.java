package railwitness.safety.caution;

import java.time.Instant;
import java.util.List;

/** Who powers the unit, when they said so, and what they had been shown and had answered. Made by {@link Briefing}. */
public final class Acknowledgement {
    private final String name;
    private final Instant when;
    private final List<Caution> cautions;
    private final List<Checklist.Answer> answers;

    Acknowledgement(String name, Instant when, List<Caution> cautions, List<Checklist.Answer> answers) {
        this.name = name;
        this.when = when;
        this.cautions = List.copyOf(cautions);
        this.answers = List.copyOf(answers);
    }

    public String name() {
        return name;
    }

    public Instant when() {
        return when;
    }

    public List<Caution> cautions() {
        return cautions;
    }

    public List<Checklist.Answer> answers() {
        return answers;
    }

    /** One sentence for the session. */
    public String sentence() {
        long taken =
                answers.stream().filter(answer -> answer.ohms().isPresent()).count();
        return name + " acknowledged " + cautions.size() + " cautions and the checklist at " + when + "; " + taken
                + " cold resistances were taken";
    }
}
