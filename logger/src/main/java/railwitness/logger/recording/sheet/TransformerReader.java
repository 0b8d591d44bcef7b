package railwitness.logger.recording.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import railwitness.drivers.sheet.SheetTable;
import railwitness.logger.recording.plan.Stage;
import railwitness.logger.recording.plan.Timing;
import railwitness.logger.recording.plan.TransformerTest;
import railwitness.logger.recording.plan.TransformerTest.Part;

/** Reads the stages of a transformer test. */
final class TransformerReader {
    private TransformerReader() {}

    /** The transformer alone on the bench. */
    static TransformerTest alone(SheetTable t, Timing timing) {
        Set<Part> known = Arrays.stream(Part.values())
                .filter(part -> part != Part.COOLING)
                .collect(Collectors.toSet());
        String words = known.stream().map(Part::word).sorted().collect(Collectors.joining(", "));
        List<String> asked = t.texts("measure", "what is measured, as far as the bench goes; all where left out")
                .eachMatching(words.replace(", ", "|"), "one of " + words)
                .orElse(List.of());
        Set<Part> parts = asked.isEmpty()
                ? known
                : known.stream().filter(part -> asked.contains(part.word())).collect(Collectors.toSet());
        boolean generator = t.text("drive", "what drives primary A at the working frequency")
                .oneOf("none", "generator")
                .orElse("none")
                .equals("generator");
        return new TransformerTest(
                parts,
                amps(t),
                generator,
                t.number("drive_Hz", "frequency of the generator; the design sheet's where left out")
                        .between(100, 1_000_000)
                        .optionalNumber(),
                t.number("sense_ohm", "resistor through which the generator drives primary A")
                        .between(0.01, 10_000)
                        .optionalNumber(),
                t.number("ring_capacitor_uF", "capacitor with which primary A rings on a scope")
                        .between(0.0001, 1000)
                        .optionalNumber(),
                t.number("tolerance_pct", "limit of the error of that resistor and that capacitor")
                        .between(0, 20)
                        .orElse(1.0),
                timing);
    }

    /** A winding of a unit that has just run. */
    static TransformerTest cooling(SheetTable t, Timing timing) {
        return new TransformerTest(
                Set.of(Part.COOLING),
                amps(t),
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                timing);
    }

    private static double amps(SheetTable t) {
        return t.number("test_current_A", "current through a winding for its resistance")
                .between(0.01, 30)
                .orElse(5.0);
    }

    /** The transformer is measured before it is in the unit, and cools after the unit ran. */
    static void order(List<SheetTable> tables, List<Stage> stages) {
        for (int i = 0; i < stages.size(); i++) {
            if (stages.get(i) instanceof TransformerTest test) {
                if (!test.cooling() && i > 0) {
                    tables.get(i).fault("kind", "transformer comes first: the transformer is not in the unit yet");
                }
                if (test.cooling() && (i < stages.size() - 1 || i == 0)) {
                    tables.get(i).fault("kind", "transformer-cooling comes last, after the unit has run");
                }
            }
        }
    }
}
