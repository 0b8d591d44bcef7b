package railwitness.logger.recording.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import railwitness.safety.caution.Check;
import railwitness.safety.caution.Checklist;

/** Cold resistances that a person took before power, as answers to the checklist. */
public final class ColdResistances {
    private ColdResistances() {}

    /**
     * Every check confirmed, and the resistances that were taken.
     *
     * @param ohms by place: input, switch-1, switch-2, or a rail's name
     * @throws IllegalArgumentException naming a place that the checklist does not have, and those it has
     */
    public static List<Checklist.Answer> answers(Checklist checklist, Map<String, Double> ohms) {
        List<Checklist.Answer> answers = new ArrayList<>(checklist.allConfirmed());
        ohms.forEach((place, value) ->
                answers.add(new Checklist.Answer(check(checklist, place), true, OptionalDouble.of(value))));
        return answers;
    }

    private static Check check(Checklist checklist, String place) {
        return checklist.checks().stream()
                .filter(check -> !check.isRequired() && place(check).equals(place))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("cold resistance at '" + place
                        + "': the checklist has "
                        + checklist.checks().stream()
                                .filter(check -> !check.isRequired())
                                .map(ColdResistances::place)
                                .collect(Collectors.joining(", "))));
    }

    /** The short word for a check's place. */
    public static String place(Check check) {
        String text = check.text();
        if (text.contains("input plus")) {
            return "input";
        }
        if (text.contains("switch bank")) {
            return "switch-" + text.substring(text.lastIndexOf(' ') + 1);
        }
        return text.replaceFirst(".*rail (\\S+) to 0 V.*", "$1");
    }
}
