package railwitness.safety.power;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Agenda;
import railwitness.safety.interlock.Phase;

/**
 * The first power of a run, from an armed supply to rails that are up: the input is raised in steps with the remote
 * turn-on off, then the unit is turned on at its working voltage and given a bounded time to fill its capacitors. It
 * ends at once, output off, when the current leaves what the design allows. One use each.
 */
public final class FirstPower {
    /** How it ended. */
    public sealed interface Outcome {
        /** The rails are up and the unit draws no more than its no-load current. */
        record Up(double amps) implements Outcome {}

        /**
         * The output was switched off.
         *
         * @param stage remote off or remote on
         * @param amps last input current, where one was read
         * @param volts input voltage that was set
         * @param words what was seen and what it points to
         */
        record Ended(String stage, OptionalDouble amps, double volts, String words) implements Outcome {}

        /** Somebody else switched the output off meanwhile. */
        record Stopped() implements Outcome {}
    }

    /** Switches the unit's remote turn-on on: by the supply, or by asking the person. */
    @FunctionalInterface
    public interface RemoteTurnOn {
        void on(Consumer<Result> then);
    }

    private enum Part {
        WAITING,
        STEPS,
        INRUSH,
        RISING,
        ENDED
    }

    private static final double OVER_LIMIT = 1.1;
    private static final Duration UNREAD = Duration.ofSeconds(3);
    private static final Duration SLOWEST_RISE = Duration.ofSeconds(3);

    private final Agenda agenda;
    private final Power power;
    private final FirstPowerBounds bounds;
    private final Channel inputAmps;
    private final List<Channel> rails;
    private final RemoteTurnOn remote;
    private final Consumer<Phase> phases;
    private final Map<Channel, Double> railVolts = new HashMap<>();

    private Consumer<Outcome> then = outcome -> {};
    private Part part = Part.WAITING;
    private int step;
    private double volts;
    private long judgedFrom;
    private OptionalDouble amps = OptionalDouble.empty();

    /**
     * @param inputAmps the channel that is judged; every reading of the run goes to {@link #heard}
     * @param rails voltage channels of the rails
     * @param phases is told each phase as it begins, for the interlock
     */
    public FirstPower(
            Agenda agenda,
            Power power,
            FirstPowerBounds bounds,
            Channel inputAmps,
            List<Channel> rails,
            RemoteTurnOn remote,
            Consumer<Phase> phases) {
        this.agenda = agenda;
        this.power = power;
        this.bounds = bounds;
        this.inputAmps = inputAmps;
        this.rails = List.copyOf(rails);
        this.remote = remote;
        this.phases = phases;
    }

    /** Switches on; the power must be armed. {@code then} is called once. */
    public void begin(Consumer<Outcome> whenOver) {
        if (part != Part.WAITING || power.state() != PowerState.ARMED) {
            throw new IllegalStateException("first power begins once, with the supply armed, not: "
                    + power.state().words());
        }
        then = whenOver;
        phases.accept(Phase.FIRST_POWER);
        double first = bounds.stepVolts().isEmpty()
                ? bounds.workingVolts()
                : bounds.stepVolts().get(0);
        double limit = bounds.stepVolts().isEmpty() ? bounds.inrushLimitAmps() : bounds.remoteOffLimitAmps();
        power.setVolts(first, done(() -> power.setCurrentLimit(limit, done(() -> power.on(done(this::isOn))))));
    }

    private void isOn() {
        if (bounds.stepVolts().isEmpty()) {
            volts = bounds.workingVolts();
            startInrush();
        } else {
            part = Part.STEPS;
            stepTaken();
        }
    }

    private void stepTaken() {
        double next = bounds.stepVolts().get(step);
        judgeAfter(bounds.inputWindow(next - volts));
        volts = next;
    }

    /** Every reading, once the interlock has judged it. */
    public void heard(Reading reading) {
        if (part == Part.WAITING || part == Part.ENDED) {
            return;
        }
        if (power.state() != PowerState.ON) {
            report(new Outcome.Stopped());
        } else if (rails.contains(reading.channel()) && reading instanceof Measured measured) {
            railVolts.put(reading.channel(), measured.value());
        } else if (reading.channel().equals(inputAmps) && !(reading instanceof Missing)) {
            judge(reading);
        }
    }

    private void judge(Reading reading) {
        double value = reading instanceof Measured measured ? measured.value() : Double.POSITIVE_INFINITY;
        amps = OptionalDouble.of(value);
        boolean settled = reading.requestedNanos() >= judgedFrom;
        double ceiling = part == Part.STEPS ? bounds.remoteOffLimitAmps() : bounds.inrushLimitAmps();
        double bound = part == Part.STEPS ? bounds.remoteOffAmps() : bounds.noLoadAmps();
        if (value > (settled ? bound : OVER_LIMIT * ceiling)) {
            end(part == Part.STEPS ? remoteOffWords(bound) : remoteOnWords(bound));
        } else if (settled && part == Part.STEPS) {
            nextStep();
        } else if (settled && part == Part.INRUSH) {
            part = Part.RISING;
            phases.accept(Phase.WORKING);
            lookForRails();
        } else if (settled) {
            lookForRails();
        }
    }

    private void nextStep() {
        step++;
        judgedFrom = Long.MAX_VALUE;
        if (step < bounds.stepVolts().size()) {
            power.setVolts(bounds.stepVolts().get(step), done(this::stepTaken));
        } else {
            power.setVolts(bounds.workingVolts(), done(this::turnOn));
        }
    }

    private void turnOn() {
        volts = bounds.workingVolts();
        power.setCurrentLimit(bounds.inrushLimitAmps(), done(this::startInrush));
    }

    private void startInrush() {
        part = Part.INRUSH;
        judgedFrom = Long.MAX_VALUE;
        phases.accept(Phase.INRUSH);
        remote.on(done(() -> judgeAfter(bounds.inrushWindow())));
    }

    private void lookForRails() {
        if (!rails.isEmpty() && low().isEmpty()) {
            phases.accept(Phase.UP);
            report(new Outcome.Up(amps.orElse(0)));
        } else if (rails.isEmpty()) {
            report(new Outcome.Up(amps.orElse(0)));
        } else if (agenda.nowNanos() - judgedFrom > SLOWEST_RISE.toNanos()) {
            end("remote on: the current is within its bound, but the rails did not come up (" + low()
                    + "): drive, start circuit or rectifier suspected");
        }
    }

    private String low() {
        return rails.stream()
                .filter(rail -> Math.abs(railVolts.getOrDefault(rail, 0.0)) < bounds.railLowVolts())
                .map(rail -> rail.node() + " "
                        + (railVolts.containsKey(rail) ? number(railVolts.get(rail), "V") : "not read"))
                .collect(Collectors.joining(", "));
    }

    /** Readings asked for after this time are judged by the narrow bound; without one, the wait is bounded too. */
    private void judgeAfter(Duration window) {
        judgedFrom = agenda.nowNanos() + window.toNanos();
        long mine = judgedFrom;
        agenda.at(mine + UNREAD.toNanos() + SLOWEST_RISE.toNanos(), () -> {
            if (mine == judgedFrom && part != Part.ENDED) {
                end("first power did not go on: no reading of the input current brought it further");
            }
        });
    }

    private Consumer<Result> done(Runnable next) {
        return result -> {
            if (part == Part.ENDED) {
                return;
            }
            if (result instanceof Result.Stopped) {
                report(new Outcome.Stopped());
            } else if (result instanceof Result.Refused) {
                end(result.words());
            } else {
                next.run();
            }
        };
    }

    private String remoteOffWords(double bound) {
        return "remote off: the unit draws " + drawn() + " at " + number(volts, "V") + ", the design allows "
                + number(bound, "A") + ": a shorted switch suspected, or the input capacitor, or reversed wiring";
    }

    private String remoteOnWords(double bound) {
        String before = bounds.stepVolts().isEmpty()
                ? ""
                : "; with the remote off it drew no more than it should, so the switches block";
        return "remote on: the unit draws " + drawn() + " at " + number(volts, "V") + " after the inrush window of "
                + number(bounds.inrushWindow().toMillis() / 1e3, "s") + ", without load the design allows "
                + number(bound, "A") + before + ": a shorted rectifier, turn or rail suspected";
    }

    private String drawn() {
        return Double.isInfinite(amps.orElse(0)) ? "more than the meter's range" : number(amps.orElse(0), "A");
    }

    private void end(String words) {
        String stage = part == Part.INRUSH || part == Part.RISING ? "remote on" : "remote off";
        power.off("first power: " + words, ended -> {});
        report(new Outcome.Ended(stage, amps, volts, words));
    }

    private void report(Outcome outcome) {
        part = Part.ENDED;
        then.accept(outcome);
    }

    private static String number(double value, String unit) {
        return String.format(Locale.ROOT, "%.3g %s", value, unit);
    }
}
