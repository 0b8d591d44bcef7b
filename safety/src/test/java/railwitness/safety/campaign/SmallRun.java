package railwitness.safety.campaign;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.Source;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;
import railwitness.safety.interlock.Event;
import railwitness.safety.interlock.Interlock;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Subject;
import railwitness.safety.interlock.Watch;
import railwitness.safety.power.Ended;
import railwitness.safety.power.FirstPower;
import railwitness.safety.power.FirstPowerBounds;
import railwitness.safety.power.FirstPowerReadings;
import railwitness.safety.power.Power;
import railwitness.safety.power.PowerLog;
import railwitness.safety.power.PowerState;
import railwitness.safety.power.RailTarget;
import railwitness.safety.power.Rails;
import railwitness.safety.power.Result;
import railwitness.safety.power.Settings;

/** As small as a run can be: arm, first power, no load, loads on, off; every reading to the interlock first. */
final class SmallRun implements PowerLog {
    /** Where in the run something goes wrong. */
    enum Moment {
        BEFORE_ARMING,
        ARMED,
        FIRST_STEPS,
        INRUSH,
        NO_LOAD,
        LOADED,
        SWITCHING_OFF,
        DISCHARGING
    }

    private static final Channel PLUS = Channel.of("plus.voltage");
    private static final Channel MINUS = Channel.of("minus.voltage");
    private static final Channel AMPS = Channel.of("supply.current");
    private static final Channel VOLTS = Channel.of("supply.voltage");
    private static final FirstPowerReadings READINGS = new FirstPowerReadings(
            AMPS,
            "the supply's leads",
            0.1,
            Optional.empty(),
            VOLTS,
            AMPS,
            List.of(RailTarget.nominal(PLUS, 37), RailTarget.nominal(MINUS, -37)));

    private final Scheduler scheduler;
    private final Bench bench;
    private final Consumer<Moment> moments;
    private final Power power;
    private final List<String> words = new ArrayList<>();
    private final List<String> alarms = new ArrayList<>();
    private Interlock interlock;
    private Optional<FirstPower> first = Optional.empty();
    private boolean armed;
    private boolean ending;
    private boolean discharging;
    private Ended ended;

    SmallRun(Scheduler scheduler, Bench bench, Consumer<Moment> moments) {
        this.scheduler = scheduler;
        this.bench = bench;
        this.moments = moments;
        Rails rails = new Rails(List.of(PLUS, MINUS), List.of(VOLTS, Channel.of("input.voltage")), 5);
        List<InstrumentWorker<railwitness.drivers.instrument.Load>> loads =
                List.copyOf(bench.loads().values());
        power = new Power(scheduler, bench.supply(), loads, rails, () -> interlock.permitted(), this);
        interlock = Interlock.of(watches(), Duration.ofSeconds(1), scheduler.nowNanos());
    }

    private static List<Watch> watches() {
        Duration fast = Duration.ofMillis(1500);
        Duration slow = Duration.ofSeconds(3);
        return List.of(
                Watch.of("supply current", AMPS, fast, Limits.atMost(29)),
                Watch.of("supply voltage", VOLTS, fast, Limits.atMost(15)),
                Watch.of("plus rail", new Subject.Magnitude(PLUS), slow, Limits.atMost(50))
                        .during(Phase.UP, Limits.between(20, 50)),
                Watch.of("minus rail", new Subject.Magnitude(MINUS), slow, Limits.atMost(50))
                        .during(Phase.UP, Limits.between(20, 50)),
                Watch.of("imbalance", new Subject.Imbalance(PLUS, MINUS), slow, Limits.open())
                        .during(Phase.UP, Limits.atMost(5)),
                Watch.of("heat sink", Channel.of("heatsink.temperature"), slow, Limits.atMost(85)));
    }

    /** Runs to the end, at most so long on the scheduler's clock. */
    void run(Duration longest) {
        moments.accept(Moment.BEFORE_ARMING);
        bench.workers().forEach(this::poll);
        tick();
        scheduler.after(Duration.ofSeconds(2), this::arm);
        long until = scheduler.nowNanos() + longest.toNanos();
        scheduler.runUntil(() -> ended != null || scheduler.nowNanos() > until);
        power.release();
    }

    private void poll(InstrumentWorker<? extends Instrument> worker) {
        worker.ask(() -> worker.instrument().poll(), outcome -> {
            outcome.either(this::heard, why -> words.add(why.getMessage()));
            scheduler.after(Duration.ofMillis(250), () -> poll(worker));
        });
    }

    private void heard(PollResult pollResult) {
        for (Reading reading : pollResult.readings()) {
            next(new Event.Read(reading));
            power.heard(reading);
            first.ifPresent(one -> one.heard(reading));
        }
        if (pollResult.instrument().equals("supply")) {
            first.ifPresent(one -> one.state(pollResult.conditions()));
        }
    }

    private void tick() {
        next(new Event.Tick(scheduler.nowNanos()));
        if (power.state() == PowerState.DISCHARGING && !discharging) {
            discharging = true;
            moments.accept(Moment.DISCHARGING);
        }
        scheduler.after(Duration.ofMillis(100), this::tick);
    }

    private void next(Event event) {
        interlock = interlock.next(event);
        interlock.trip().ifPresent(trip -> end("trip: " + trip.words()));
    }

    private void arm() {
        Settings settings = new Settings(Source.SUPPLY, 3, 14.4, 1, 16, 30, 0.01, 0.01, Optional.empty());
        power.arm(settings, done(this::armed));
    }

    private void armed() {
        armed = true;
        moments.accept(Moment.ARMED);
        scheduler.after(Duration.ofMillis(500), this::begin);
    }

    private void begin() {
        if (ending) {
            return;
        }
        FirstPowerBounds bounds = new FirstPowerBounds(
                List.of(3.0, 6.0, 9.0), 1, 0.2, true, 4700e-6, 13.8, 9.5, 8, 8, Duration.ofSeconds(1), 2, true);
        FirstPower.RemoteTurnOn remote = then -> power.remote(true, then);
        first = Optional.of(new FirstPower(
                scheduler, power, bounds, READINGS, remote, (sentence, yes) -> yes.run(), this::entered));
        first.get().begin(this::firstPowerOver);
    }

    private void entered(Phase phase) {
        next(new Event.Enter(phase, scheduler.nowNanos()));
        if (phase == Phase.FIRST_POWER) {
            moments.accept(Moment.FIRST_STEPS);
        } else if (phase == Phase.INRUSH) {
            moments.accept(Moment.INRUSH);
        }
    }

    private void firstPowerOver(FirstPower.Outcome outcome) {
        if (outcome instanceof FirstPower.Outcome.Up) {
            moments.accept(Moment.NO_LOAD);
            power.setCurrentLimit(30, done(() -> scheduler.after(Duration.ofSeconds(1), this::load)));
        } else if (outcome instanceof FirstPower.Outcome.Ended over) {
            end(over.words());
        }
    }

    private void load() {
        next(new Event.Changed(scheduler.nowNanos()));
        power.setLoad("plus", 2, done(() -> power.setLoad("minus", 2, done(this::loaded))));
    }

    private void loaded() {
        next(new Event.Changed(scheduler.nowNanos()));
        moments.accept(Moment.LOADED);
        scheduler.after(Duration.ofSeconds(4), () -> {
            if (!ending) {
                moments.accept(Moment.SWITCHING_OFF);
                end("end of the run");
            }
        });
    }

    private Consumer<Result> done(Runnable then) {
        return result -> {
            if (ending || result instanceof Result.Stopped) {
                return;
            }
            if (result.isDone()) {
                then.run();
            } else {
                end(result.words());
            }
        };
    }

    private void end(String why) {
        if (!ending) {
            ending = true;
            words.add(why);
            next(new Event.Enter(Phase.OFF, scheduler.nowNanos()));
            power.off(why, over -> {
                ended = over;
                words.add(over.words());
            });
        }
    }

    boolean isOver() {
        return ended != null;
    }

    boolean tripped() {
        return interlock.trip().isPresent();
    }

    boolean wasArmed() {
        return armed;
    }

    /** True when the person was told to open the disconnect. */
    boolean told() {
        return alarms.stream().anyMatch(alarm -> alarm.contains("open the disconnect"));
    }

    List<String> words() {
        return words;
    }

    @Override
    public void step(long atNanos, String what, String said) {
        if (Boolean.getBoolean("campaign.steps")) {
            System.out.println(atNanos / 1_000_000 + " ms " + what + ": " + said);
        }
    }

    @Override
    public void alarm(long atNanos, String said) {
        alarms.add(said);
        scheduler.after(Duration.ofSeconds(20), power::disconnectOpen);
    }

    @Override
    public void alarmOver(long atNanos, String said) {
        words.add(said);
    }
}
