package railwitness.logger.recording.sheet;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import railwitness.drivers.sheet.SheetTable;
import railwitness.logger.recording.plan.CrossLoad;
import railwitness.logger.recording.plan.Hold;
import railwitness.logger.recording.plan.HoldPart;
import railwitness.logger.recording.plan.HoldRules;
import railwitness.logger.recording.plan.LineSweep;
import railwitness.logger.recording.plan.LoadSweep;
import railwitness.logger.recording.plan.NoLoad;
import railwitness.logger.recording.plan.Plan;
import railwitness.logger.recording.plan.PowerUp;
import railwitness.logger.recording.plan.Stage;
import railwitness.logger.recording.plan.Standby;
import railwitness.logger.recording.plan.Timing;

/** Reads a plan. */
public final class PlanReader {
    private static final Duration LEAST_OFF = Duration.ofSeconds(20);
    private static final double LONGEST_S = 7 * 24 * 3600;
    private static final String SUPPLY = "supply";
    private static final String TERMINALS = "terminals";

    private PlanReader() {}

    /** To be given to {@link railwitness.drivers.sheet.Sheet#read}. */
    public static Plan plan(SheetTable root) {
        SheetTable head = root.table("plan", "the plan as a whole");
        String name = head.text("name", "what the plan is called").orElse("unnamed plan");
        double settle = head.number("settle_at_most_s", "longest wait for a step to settle")
                .between(0, LONGEST_S)
                .orElse(60.0);
        double average = head.number("average_s", "how long a settled step is averaged")
                .between(0.1, LONGEST_S)
                .orElse(10.0);
        double answer = head.number(
                        "answer_at_most_s",
                        "longest wait for what a person is asked while the output is on; then it is switched off")
                .between(5, LONGEST_S)
                .orElse(300.0);
        String held = head.text(
                        "hold_input",
                        "what is held at each step's input: the supply's setting, or the unit's terminals")
                .oneOf(SUPPLY, TERMINALS)
                .orElse(SUPPLY);
        double raise = head.number(
                        "raise_at_most_V",
                        "with hold_input = \"terminals\": how far above a step's input the supply may be set")
                .between(0.01, 3)
                .orElse(0.6);
        List<SheetTable> stages = root.tables("stage", "one kind of test; they are done in this order");
        if (stages.isEmpty()) {
            root.fault("stage", "is missing: a plan needs at least one [[stage]]");
        }
        List<Stage> read = stages.stream().map(t -> stage(t, settle, average)).toList();
        TransformerReader.order(stages, read);
        return new Plan(
                name,
                read,
                seconds(answer),
                held.equals(TERMINALS) ? OptionalDouble.of(raise) : OptionalDouble.empty());
    }

    private static Stage stage(SheetTable t, double settle, double average) {
        String kind = t.text("kind", "what is tested")
                .oneOf(
                        "standby",
                        "power-up",
                        "no-load",
                        "load-sweep",
                        "line-sweep",
                        "cross-load",
                        "hold",
                        "transformer",
                        "transformer-cooling")
                .required();
        Timing timing = new Timing(
                seconds(t.number("settle_at_most_s", "longest wait for a step of this stage to settle")
                        .between(0, LONGEST_S)
                        .orElse(settle)),
                seconds(t.number("average_s", "how long a settled step of this stage is averaged")
                        .between(0.1, LONGEST_S)
                        .orElse(average)));
        return switch (kind) {
            case "standby" -> new Standby(timing);
            case "power-up" ->
                new PowerUp(t.number("current_limit_A", "supply's limit until the rails are up")
                        .between(0.1, 1000)
                        .required());
            case "load-sweep" ->
                new LoadSweep(
                        t.numbers("loads_pct", "of full load, in this order; the 25 % step is repeated at the end")
                                .between(0.1, 150)
                                .count(1, 100)
                                .orElse(List.of(25.0, 50.0, 75.0, 100.0)),
                        timing);
            case "line-sweep" -> lineSweep(t, timing);
            case "cross-load" -> crossLoad(t, timing);
            case "hold" -> hold(t, timing);
            case "transformer" -> TransformerReader.alone(t, timing);
            case "transformer-cooling" -> TransformerReader.cooling(t, timing);
            default -> new NoLoad(timing);
        };
    }

    private static Stage hold(SheetTable t, Timing timing) {
        double load =
                t.number("load_pct", "of full load, all rails").between(0, 150).orElse(100.0);
        Duration duration = seconds(t.number("duration_s", "how long the load is held, at most")
                .between(1, LONGEST_S)
                .required());
        Optional<String> until = t.text("until", "stability rule that ends the hold early")
                .oneOf(HoldRules.names().toArray(String[]::new))
                .optional();
        Duration atLeast = seconds(t.number("at_least_s", "before this nothing ends the hold early")
                .between(0, LONGEST_S)
                .orElse(0.0));
        Optional<Duration> key =
                optional(t.number("key_every_s", "if given: so often a person must press a key, or the output goes off")
                        .between(60, LONGEST_S)
                        .optionalNumber());
        OptionalDouble hottest = t.number(
                        "hottest_degC", "if given: beyond this at any thermometer the output goes off")
                .between(20, 300)
                .optionalNumber();
        OptionalDouble drift = t.number(
                        "drift_alarm_pct_h", "if given: a rail that drifts faster than this over half an hour is told")
                .between(0.0001, 1000)
                .optionalNumber();
        List<HoldPart> cycle = t.tables("cycle", "parts of a cycle, repeated as long as the hold lasts").stream()
                .map(PlanReader::part)
                .toList();
        return new Hold(load, duration, timing, new HoldRules(until, atLeast, key, hottest, drift), cycle);
    }

    private static HoldPart part(SheetTable t) {
        Duration length =
                seconds(t.number("for_s", "length of this part of the cycle; an off period takes 20 s at least")
                        .between(1, LONGEST_S)
                        .required());
        boolean off = t.flag(
                        "off", "the supply's output goes off for this part; after it the unit comes up by first power")
                .orElse(false);
        OptionalDouble load = t.number("load_pct", "load of this part, of full load; required but for an off period")
                .between(0, 150)
                .optionalNumber();
        OptionalDouble volts = t.number("input_V", "supply setting of this part (default: the nominal input)")
                .between(1, 60)
                .optionalNumber();
        if (off) {
            refuseInOff(t, length, load, volts);
        } else if (load.isEmpty()) {
            t.fault("load_pct", "is missing: every part of a cycle but an off period needs its load");
        }
        return new HoldPart(length, load.orElse(0), volts, off);
    }

    private static void refuseInOff(SheetTable t, Duration length, OptionalDouble load, OptionalDouble volts) {
        if (load.orElse(0) > 0 || volts.isPresent()) {
            t.fault(
                    load.orElse(0) > 0 ? "load_pct" : "input_V",
                    "is for parts with the output on: leave it out where off");
        }
        if (length.compareTo(LEAST_OFF) < 0) {
            t.fault("for_s", "of an off period must be 20 s at least: the rails empty and are watched until safe");
        }
    }

    private static Optional<Duration> optional(OptionalDouble seconds) {
        return seconds.isPresent() ? Optional.of(seconds(seconds.getAsDouble())) : Optional.empty();
    }

    private static Stage lineSweep(SheetTable t, Timing timing) {
        return new LineSweep(
                t.number("load_pct", "of full load, all rails").between(0, 150).orElse(50.0),
                t.numbers("inputs_V", "settings of the supply, in this order")
                        .between(1, 60)
                        .count(2, 100)
                        .required(),
                t.number("drop_out_step_V", "if given: lower the input by this until the unit drops out")
                        .between(0.01, 2)
                        .optionalNumber(),
                timing);
    }

    private static Stage crossLoad(SheetTable t, Timing timing) {
        double low = t.number("low_pct", "load of the rails that stay low, of full load")
                .between(0, 100)
                .orElse(10.0);
        double high = t.number("high_pct", "load of the rail that goes high, of full load")
                .between(0, 150)
                .orElse(100.0);
        if (high <= low) {
            t.fault("high_pct", "must be above low_pct");
        }
        return new CrossLoad(low, high, timing);
    }

    private static Duration seconds(double seconds) {
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }
}
