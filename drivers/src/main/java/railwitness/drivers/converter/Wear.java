package railwitness.drivers.converter;

import java.util.Locale;

/** What running does to a unit's parts. */
@FunctionalInterface
public interface Wear {
    /** Nothing changes. */
    Wear NONE = (fresh, life) -> fresh;

    /**
     * How far a unit has come.
     *
     * @param seconds since its begin
     * @param transformerDegC temperature of the transformer
     * @param heatsinkDegC temperature of the heat sink
     */
    record Life(double seconds, double transformerDegC, double heatsinkDegC) {}

    /** The unit as it is after that life. */
    Specimen at(Specimen fresh, Life life);

    /** This one, and then another. */
    default Wear and(Wear other) {
        return other == NONE ? this : this == NONE ? other : (fresh, life) -> other.at(at(fresh, life), life);
    }

    /** A filter capacitor dries out: its series resistance grows by so much of its first value in an hour. */
    static Wear capacitor(String rail, double sharePerHour) {
        return (fresh, life) -> fresh.withRail(
                rail,
                one -> one.withCapacitor(
                        one.capacitorFarad(),
                        Math.min(100, one.capacitorEsrOhm() * (1 + sharePerHour * life.seconds() / 3600))));
    }

    /** A joint in the input opens as it gets hot and closes as it cools: 50 milliohm over a few kelvin. */
    static Wear joint(double opensAtDegC) {
        return (fresh, life) -> {
            double open = 1 / (1 + Math.exp(-(life.heatsinkDegC() - opensAtDegC) / 1.0));
            Specimen.Input input = fresh.input();
            return fresh.withInput(
                    new Specimen.Input(input.leadOhm() + 0.05 * open, input.capacitorFarad(), input.capacitorEsrOhm()));
        };
    }

    /** Core loss that grows with so much of itself per kelvin above 60 degC, as behind a ferrite's lowest loss. */
    static Wear core(double sharePerKelvin) {
        return (fresh, life) -> {
            double factor = 1 + sharePerKelvin * Math.max(0, life.transformerDegC() - 60);
            Specimen.Transformer core = fresh.transformer();
            return fresh.withTransformer(core.withCore(
                    core.magnetisingHenry(), core.saturationVoltSeconds(), Math.max(0.1, core.coreOhm() / factor)));
        };
    }

    /** Switches whose resistance doubles with every so many kelvin above 50 degC: heat makes heat. */
    static Wear runaway(double doublesEveryKelvin) {
        return (fresh, life) -> {
            double factor = Math.pow(2, Math.max(0, life.heatsinkDegC() - 50) / doublesEveryKelvin);
            return fresh.withSides(hotter(fresh.side1(), factor), hotter(fresh.side2(), factor));
        };
    }

    private static Specimen.Switch hotter(Specimen.Switch side, double factor) {
        return new Specimen.Switch(Math.min(1, side.onOhm() * factor), side.perKelvin(), side.offOhm(), side.driven());
    }

    /**
     * Reads {@code capacitor@plus=0.2}, {@code joint=55}, {@code core=0.02} or {@code runaway=10}.
     *
     * @throws IllegalArgumentException that says what is known
     */
    static Wear of(String text) {
        int equals = text.indexOf('=');
        String known = "'" + text + "' is no wear; known are capacitor@RAIL=SHARE_PER_HOUR, joint=DEGC,"
                + " core=SHARE_PER_KELVIN and runaway=KELVIN";
        if (equals < 0) {
            throw new IllegalArgumentException(known);
        }
        double value;
        try {
            value = Double.parseDouble(text.substring(equals + 1));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(known, e);
        }
        if (!(value > 0 && value < 1e4)) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "'%s': the number must be above 0 and below 10000", text));
        }
        String head = text.substring(0, equals);
        if (head.startsWith("capacitor@")) {
            return capacitor(head.substring("capacitor@".length()), value);
        }
        return switch (head) {
            case "joint" -> joint(value);
            case "core" -> core(value);
            case "runaway" -> runaway(value);
            default -> throw new IllegalArgumentException(known);
        };
    }
}
