package railwitness.logger.reporting.certificate;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import railwitness.analysis.cause.Cause;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.supply.Points;
import railwitness.analysis.verdict.DecisionRule;

/** Sentences that say in short what the sheets and the session hold. */
final class Wording {
    private Wording() {}

    /** As few digits as say the number, at most five. */
    static String number(double value) {
        return Typography.of(
                new BigDecimal(value, new MathContext(5)).stripTrailingZeros().toPlainString());
    }

    static String ruleInShort(DecisionRule rule) {
        return rule == DecisionRule.GUARD_BAND
                ? "guard band of 95 % (ILAC-G8, non-binary)"
                : "simple acceptance (ILAC-G8)";
    }

    /** Such as "push-pull, 4 : 12 turns, plus 36.7 V at 4 A, minus -36.7 V at 4 A". */
    static String design(Design design) {
        String turns = design.transformer()
                .map(transformer -> ", " + transformer.primaryTurns() + " : " + transformer.secondaryTurns() + " turns")
                .orElse("");
        return "push-pull" + turns + ", " + rails(design);
    }

    private static String rails(Design design) {
        if (symmetrical(design)) {
            var rail = design.rails().get(0);
            return "\u00b1" + number(Math.abs(rail.nominalVolts())) + " V" + load(rail.fullLoadAmperes());
        }
        return design.rails().stream()
                .map(rail -> rail.name() + " " + number(rail.nominalVolts()) + " V" + load(rail.fullLoadAmperes()))
                .collect(Collectors.joining(", "));
    }

    private static boolean symmetrical(Design design) {
        return design.rails().size() == 2
                && design.rails().get(0).nominalVolts()
                        == -design.rails().get(1).nominalVolts()
                && design.rails()
                        .get(0)
                        .fullLoadAmperes()
                        .equals(design.rails().get(1).fullLoadAmperes());
    }

    private static String load(java.util.OptionalDouble amps) {
        return amps.isPresent() ? " at " + number(amps.getAsDouble()) + " A" : "";
    }

    static String switching(Design design) {
        if (design.converter().frequencyHz().isEmpty()) {
            return "frequency not stated";
        }
        double kilohertz = design.converter().frequencyHz().getAsDouble() / 1000;
        return number(kilohertz) + " kHz, ripple at " + number(2 * kilohertz) + " kHz";
    }

    /** Nominal input, and what was left of it at full load. */
    static String input(Evidence evidence) {
        Optional<Design> design = evidence.session().design();
        Points points = new Points(evidence.session().findings().points(), design);
        String set = design.map(sheet -> number(sheet.input().nominalVolts()) + " V nominal")
                .orElse("nominal not stated");
        return set
                + points.fullLoad()
                        .map(point -> String.format(
                                Locale.ROOT,
                                "; %.2f V %s at full load",
                                point.input().voltage().value(),
                                place(point)))
                        .orElse("");
    }

    private static String place(OperatingPoint point) {
        return switch (point.inputSource()) {
            case TERMINALS -> "at its terminals";
            case SUPPLY_READ_BACK -> "read back at the supply";
        };
    }

    /** The likeliest probable cause; empty where nothing looks wrong. */
    static Optional<String> likeliest(Evidence evidence) {
        return evidence.session().findings().causes().stream().findFirst().map(Wording::cause);
    }

    static String cause(Cause cause) {
        return cause.rail().map(rail -> rail + " rail: ").orElse("")
                + cause.text()
                + cause.place().map(place -> ", " + place).orElse("")
                + String.format(Locale.ROOT, " (share %.2f, fit %.2f of 1)", cause.share(), cause.fit())
                + (cause.alike().isEmpty()
                        ? "."
                        : "; these readings do not tell it from "
                                + cause.alike().stream()
                                        .map(code -> code.word())
                                        .collect(Collectors.joining(", "))
                                + ".");
    }

    /** What can hurt, with the highest voltage that stood there. */
    static String caution(Evidence evidence) {
        String stood = evidence.tally()
                .between()
                .filter(standing -> standing.volts() > 0.5)
                .map(standing -> String.format(
                        Locale.ROOT,
                        "%.0f V at the most stood %s in this session. ",
                        Math.ceil(standing.volts()),
                        evidence.session()
                                                .design()
                                                .map(design -> design.rails().size())
                                                .orElse(2)
                                        > 1
                                ? "between the rails"
                                : "on the rail"))
                .orElse("");
        return stood + "The capacitors keep their charge after power is off; local codes come first.";
    }
}
