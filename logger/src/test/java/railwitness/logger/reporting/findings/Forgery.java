package railwitness.logger.reporting.findings;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;
import railwitness.drivers.reading.Channel;

/**
 * What may be wrong with the leads, shunts and meters of a bench, done to its readings.
 *
 * @param expected codes of which one at least must be named
 * @param altered what becomes of a value, by channel
 * @param exchanged under which channel the readings of another stand
 * @param frozen channels that stay what they were
 * @param frozenFromStep from the begin of this step on, counted from 0
 * @param shaking by which share at most a frozen reading still moves, as the last digits of a meter do
 */
record Forgery(
        String name,
        Set<String> expected,
        Map<String, DoubleUnaryOperator> altered,
        Map<String, String> exchanged,
        Set<String> frozen,
        int frozenFromStep,
        double shaking) {
    private static final Set<String> INPUT =
            Set.of("instruments-disagree", "power-balance", "negative-input", "exchanged-leads", "frozen");

    static Forgery sign(String... channels) {
        boolean input = channels[0].startsWith("input");
        return altered(
                "sign of " + String.join(" and ", channels), input ? "negative-input" : "polarity", v -> -v, channels);
    }

    static Forgery altered(String name, String code, DoubleUnaryOperator how, String... channels) {
        Map<String, DoubleUnaryOperator> altered = new HashMap<>();
        for (String channel : channels) {
            altered.put(channel, how);
        }
        return new Forgery(name, code.isEmpty() ? INPUT : Set.of(code), altered, Map.of(), Set.of(), 0, 0);
    }

    static Forgery exchanged(String one, String other) {
        return new Forgery(
                one + " and " + other + " exchanged",
                Set.of("exchanged-leads", "instruments-disagree", "power-balance"),
                Map.of(),
                Map.of(one, other, other, one),
                Set.of(),
                0,
                0);
    }

    static Forgery frozen(String channel, int fromStep) {
        return new Forgery(
                channel + " frozen from step " + fromStep,
                Set.of("frozen"),
                Map.of(),
                Map.of(),
                Set.of(channel),
                fromStep,
                0);
    }

    /** A load that no longer follows what it is set to: its current stays, all but the last digits. */
    static Forgery stuck(String channel, int fromStep) {
        return new Forgery(
                channel + " stuck from step " + fromStep,
                Set.of("instruments-disagree"),
                Map.of(),
                Map.of(),
                Set.of(channel),
                fromStep,
                1e-4);
    }

    /** The columns of two rails stand under each other's names, all of them. */
    static Forgery railsExchanged(String one, String other) {
        Map<String, String> exchanged = new HashMap<>();
        for (String quantity : List.of("voltage", "current", "ripple")) {
            exchanged.put(one + "." + quantity, other + "." + quantity);
            exchanged.put(other + "." + quantity, one + "." + quantity);
        }
        return new Forgery(
                one + " and " + other + " exchanged in the table",
                Set.of("polarity", "exchanged-leads"),
                Map.of(),
                exchanged,
                Set.of(),
                0,
                0);
    }

    /** A load that reads its voltage beside the rail's meter. */
    static Forgery loadsVoltage(String name, String rail, DoubleUnaryOperator how) {
        String own = rail + "-load.voltage";
        return new Forgery(
                name, Set.of("instruments-disagree"), Map.of(own, how), Map.of(own, rail + ".voltage"), Set.of(), 0, 0);
    }

    /** Not forged: a load that reads its voltage as it is, a little below the rail's for its leads. */
    static Forgery none() {
        return loadsVoltage("nothing", "plus", v -> v * 0.998);
    }

    /** With a bank of resistors on the plus rail: another one than is switched in was typed. */
    static Forgery wrongResistor(RandomGenerator random) {
        double by = random.nextDouble(0.3, 0.5);
        return altered("resistor typed by " + by, "power-balance", v -> v * by, "plus-load.resistance");
    }

    /** Every kind once, sizes drawn; for a bench whose loads tell what they are set to and whose supply reads back. */
    static List<Forgery> all(RandomGenerator random) {
        double less = random.nextDouble(0.4, 0.8);
        double more = random.nextDouble(1.25, 2);
        int from = random.nextInt(1, 4);
        return List.of(
                sign("input.current"),
                sign("input.voltage"),
                sign("plus.voltage"),
                sign("minus.voltage"),
                sign("plus.voltage", "minus.voltage"),
                sign("plus.current"),
                altered("input current by " + less, "", v -> v * less, "input.current"),
                altered("input current by " + more, "", v -> v * more, "input.current"),
                altered("input voltage by " + less, "instruments-disagree", v -> v * less, "input.voltage"),
                altered("input voltage by " + more, "instruments-disagree", v -> v * more, "input.voltage"),
                altered("plus current by " + less, "instruments-disagree", v -> v * less, "plus.current"),
                altered("minus current by " + more, "instruments-disagree", v -> v * more, "minus.current"),
                altered("both rails by " + more, "power-balance", v -> v * more, "plus.voltage", "minus.voltage"),
                altered("supply's current by " + less, "instruments-disagree", v -> v * less, "supply.current"),
                altered("input voltage by 1 V", "instruments-disagree", v -> v + 1, "input.voltage"),
                altered("input current by 2 A", "", v -> v + 2, "input.current"),
                altered("plus current by 0.5 A", "instruments-disagree", v -> v + 0.5, "plus.current"),
                exchanged("input.voltage", "input.current"),
                exchanged("plus.voltage", "minus.voltage"),
                exchanged("plus.current", "minus.current"),
                exchanged("input.voltage", "plus.voltage"),
                exchanged("input.current", "minus.current"),
                frozen("input.current", from),
                frozen("input.voltage", from),
                frozen("supply.current", from),
                frozen("supply.voltage", from),
                frozen("plus.voltage", from),
                frozen("minus.current", from),
                stuck("plus.current", from),
                stuck("minus.current", from),
                railsExchanged("plus", "minus"),
                loadsVoltage("load reads plus by " + less, "plus", v -> v * less),
                loadsVoltage("load reads minus by " + more, "minus", v -> v * more),
                loadsVoltage("load reads plus 2 V above", "plus", v -> v + 2));
    }

    /** Of which channel the readings stand under this name. */
    Channel source(Channel name) {
        return Channel.of(exchanged.getOrDefault(name.toString(), name.toString()));
    }

    /** Channels that no instrument of the bench reads. */
    Set<Channel> added(Set<Channel> read) {
        Set<Channel> added = new HashSet<>();
        exchanged.keySet().stream()
                .map(Channel::of)
                .filter(channel -> !read.contains(channel))
                .forEach(added::add);
        return added;
    }

    double shown(Channel name, double value) {
        return altered.getOrDefault(name.toString(), v -> v).applyAsDouble(value);
    }
}
