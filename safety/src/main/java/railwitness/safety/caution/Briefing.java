package railwitness.safety.caution;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * All that stands between a person and power: cautions, checklist, and what refuses power altogether. The only way to
 * an {@link Acknowledgement}.
 */
public record Briefing(List<Caution> cautions, Checklist checklist, List<String> refusals) {
    public Briefing {
        cautions = List.copyOf(cautions);
        refusals = List.copyOf(refusals);
    }

    public static Briefing of(Hazards hazards, Checklist checklist) {
        return new Briefing(Cautions.of(hazards), checklist, Cautions.refusals(hazards));
    }

    /** The same at a supply that has only knobs. */
    public static Briefing ofKnobs(Hazards hazards, Checklist checklist) {
        return new Briefing(Cautions.of(hazards, true), checklist.byHand(), Cautions.refusals(hazards));
    }

    /**
     * A person takes responsibility.
     *
     * @throws IllegalArgumentException with every reason why there is no power: refusals, checks not confirmed,
     *     resistances too low, no name
     */
    public Acknowledgement acknowledge(String name, Instant when, List<Checklist.Answer> answers) {
        List<String> against = new ArrayList<>(refusals);
        if (name.isBlank()) {
            against.add("the person who powers the unit must be named");
        }
        against.addAll(checklist.against(answers));
        if (!against.isEmpty()) {
            throw new IllegalArgumentException(String.join("; ", against));
        }
        return new Acknowledgement(name.strip(), when, cautions, answers);
    }
}
