package railwitness.safety.power;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.stream.Stream;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.RequestOutcome;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;

/**
 * One switching off, from the first byte to the last load: the supply is told off over whatever is under way and asked
 * until it says so; the loads stay on until the rails are safe or stop falling, then go off; the input is looked at, in
 * case the supply says off and is not.
 */
final class SwitchOff {
    static final String OPEN = "could not be switched off: open the disconnect";

    private static final int TRIES = 3;
    private static final Duration ANSWER = Duration.ofSeconds(2);
    /** Once the person was told, an answer that takes long is waited for rather than cut. */
    private static final Duration PATIENT_ANSWER = Duration.ofSeconds(10);

    private static final Duration AGAIN = Duration.ofSeconds(1);

    /** What a person with knobs is told, large. */
    static final String BY_HAND =
            "Switch the supply's output OFF by hand NOW, or open the disconnect. This is said again"
                    + " until you say that it is off and the rails are read low";

    private static final Duration LOOK = Duration.ofMillis(100);
    private static final Duration INPUT_GRACE = Duration.ofSeconds(5);
    /** A reading of the input older than this says nothing of it. */
    private static final Duration INPUT_AGE = Duration.ofSeconds(5);

    private static final double INPUT_SHARE = 0.9;
    private static final double LEAST_INPUT_VOLTS = 1;
    private static final int STEPS_TOLD = 10;

    private final Scheduler scheduler;
    private final InstrumentWorker<? extends Supply> supply;
    private final List<InstrumentWorker<? extends Load>> loads;
    private final Rails rails;
    private final LatestReadings latest;
    private final double setVolts;
    private final PowerLog log;
    private final Consumer<PowerState> states;
    private final List<Consumer<Ended>> waiting = new ArrayList<>();
    private final List<String> troubles = new ArrayList<>();

    private long awaited;
    private int tries;
    private boolean confirmed;
    private boolean alarmed;
    private boolean doubted;
    private boolean released;
    private boolean insisted;
    private Discharge discharge;
    private long dischargingSince;
    private boolean loadsTold;
    private boolean remoteTold;
    private int open;
    private Ended ended;
    private final boolean byHand;
    private boolean asking;

    SwitchOff(
            Scheduler scheduler,
            InstrumentWorker<? extends Supply> supply,
            List<InstrumentWorker<? extends Load>> loads,
            Rails rails,
            LatestReadings latest,
            double setVolts,
            PowerLog log,
            Consumer<PowerState> states) {
        this.scheduler = scheduler;
        this.supply = supply;
        this.loads = loads;
        this.rails = rails;
        this.latest = latest;
        this.setVolts = setVolts;
        this.log = log;
        this.states = states;
        this.byHand = supply.instrument().isSetByHand();
    }

    void start(String reason, Consumer<Ended> then) {
        waiting.add(then);
        states.accept(PowerState.SWITCHING_OFF);
        sendOff(reason);
        if (byHand) {
            log.alarm(scheduler.nowNanos(), BY_HAND);
        }
        attempt();
    }

    /** The plan is done and nothing is wrong: a person with knobs is asked, not shouted at; shouted at when they wait. */
    void startCalmly(String reason, Consumer<Ended> then) {
        if (!byHand) {
            start(reason, then);
            return;
        }
        waiting.add(then);
        states.accept(PowerState.SWITCHING_OFF);
        tell("off asked for", reason);
        attempt();
    }

    /** A second call for off while the first is under way, or after it ended without being confirmed. */
    void again(String reason, Consumer<Ended> then) {
        sendOff(reason);
        if (ended == null) {
            waiting.add(then);
        } else {
            then.accept(ended);
        }
    }

    boolean isOver() {
        return ended != null && confirmed;
    }

    /** A person says that the disconnect is open: the supply is no longer waited for. */
    void disconnectOpen() {
        if (!confirmed && !insisted) {
            insisted = true;
            tell("disconnect open", "a person says that the disconnect is open");
            watchRailsAnew();
            judge();
        }
    }

    /** Nobody is left who could switch off by hand or say that it is off: it ends without being confirmed. */
    void abandon() {
        if (byHand && ended == null) {
            alarm("nobody is there to switch the supply off by hand: take its output as ON, and it " + OPEN);
            released = true;
            startDischarge();
            ended = new Ended(
                    false,
                    discharge.belowTouch() && discharge.allSeen(),
                    "nobody said that the output is off: take it as ON; the supply " + OPEN);
            tell("switched off", ended.words());
            List<Consumer<Ended>> told = List.copyOf(waiting);
            scheduler.post(() -> told.forEach(then -> then.accept(ended)));
        }
    }

    Discharge discharge() {
        return discharge;
    }

    void release() {
        released = true;
    }

    private void sendOff(String reason) {
        boolean sent = supply.instrument().cutIn(supply.instrument().offBytes());
        tell(
                "off sent",
                (byHand
                                ? "told to switch off by hand"
                                : sent ? "output off sent" : "the port is gone, output off not sent")
                        + ": " + reason);
    }

    private void attempt() {
        long mine = ++awaited;
        if (!asking) {
            asking = byHand; // one question to a person is enough, however often it is said
            supply.askFirst(this::sendAndAsk, outcome -> {
                asking = false;
                answered(mine, worded(outcome));
            });
        }
        scheduler.after(
                alarmed || byHand ? PATIENT_ANSWER : ANSWER,
                () -> answered(
                        mine,
                        new Result.Stopped(
                                byHand ? "nobody has said yet that it is off" : "no answer from the supply")));
    }

    private Result sendAndAsk() {
        Supply instrument = supply.instrument();
        return guarded(() -> {
            if (byHand) {
                return instrument.isOn()
                        ? new Result.Refused("the output is still on")
                        : new Result.Done("a person says that the output is off");
            }
            if (!instrument.cutIn(instrument.offBytes())) {
                instrument.reconnect();
                instrument.cutIn(instrument.offBytes());
            }
            return instrument.isOn()
                    ? new Result.Refused("the supply says that it is still on")
                    : new Result.Done("the supply says off");
        });
    }

    private void answered(long mine, Result result) {
        if (released || confirmed || (mine != awaited && !result.isDone())) {
            return;
        }
        awaited++;
        tries++;
        if (tries <= STEPS_TOLD) {
            tell("off read back", result.words());
        }
        if (result.isDone() && !inputStands()) {
            confirm();
            return;
        }
        supply.instrument().cutIn(supply.instrument().offBytes());
        if (tries >= TRIES && !alarmed) {
            alarm("the supply " + OPEN);
            startDischarge();
        }
        scheduler.after(tries < TRIES ? Duration.ZERO : AGAIN, this::attemptUnlessOver);
    }

    private void attemptUnlessOver() {
        if (!released && !confirmed) {
            attempt();
        }
    }

    private void alarm(String words) {
        alarmed = true;
        confirmed = false;
        states.accept(PowerState.NOT_CONFIRMED);
        log.alarm(scheduler.nowNanos(), words);
    }

    private void confirm() {
        confirmed = true;
        states.accept(ended == null ? PowerState.DISCHARGING : PowerState.OFF);
        if (alarmed || byHand) {
            alarmed = false;
            log.alarmOver(
                    scheduler.nowNanos(), byHand ? "a person says that the output is off" : "the supply says off now");
            watchRailsAnew();
        }
        startDischarge();
    }

    /** What the rails did while the output may still have been on says nothing of their discharge. */
    private void watchRailsAnew() {
        if (discharge != null && ended == null) {
            dischargingSince = scheduler.nowNanos();
            discharge = new Discharge(rails, dischargingSince);
            doubted = false;
            if (open == 0) {
                loadsTold = false; // what did not answer then may do so now
                troubles.clear();
            }
        }
    }

    private void startDischarge() {
        if (discharge == null) {
            dischargingSince = scheduler.nowNanos();
            discharge = new Discharge(rails, dischargingSince);
            look();
        }
    }

    void heard(Reading reading) {
        if (discharge == null
                || !(reading instanceof Measured measured)
                || reading.requestedNanos() < dischargingSince) {
            return;
        }
        discharge.heard(measured);
        judge();
    }

    private void look() {
        judge();
        if (!released && !isOver()) {
            scheduler.after(LOOK, this::look);
        }
    }

    private void judge() {
        if (confirmed && !doubted && inputGraceOver() && inputStands()) {
            doubted = true;
            alarm("the supply says off, but " + inputWords() + " stand at the input; it may be on: it " + OPEN
                    + " and take the unit as live");
            tries = TRIES;
            scheduler.after(AGAIN, this::attemptUnlessOver);
        }
        if (!loadsTold && loadsOfNoMoreUse()) {
            loadsTold = true;
            tell("rails", discharge.words());
            loadsOff();
        }
        if (loadsTold && confirmed && !remoteTold) {
            remoteTold = true;
            remoteOff();
        }
        boolean offKnown = confirmed && remoteTold && inputJudged() || insisted;
        if (loadsTold && open == 0 && ended == null && offKnown && loadsOfNoMoreUse()) {
            end();
        }
    }

    private boolean loadsOfNoMoreUse() {
        long now = scheduler.nowNanos();
        boolean tooLong = now - dischargingSince >= Discharge.LONGEST_WAIT.toNanos();
        return (byHand ? discharge.belowTouch() : discharge.over(now)) || tooLong;
    }

    private boolean inputJudged() {
        return inputGraceOver() || (inputs().findAny().isPresent() && !inputStands());
    }

    private boolean inputGraceOver() {
        return scheduler.nowNanos() - dischargingSince >= INPUT_GRACE.toNanos();
    }

    private boolean inputStands() {
        return setVolts > LEAST_INPUT_VOLTS
                && inputs().filter(reading -> scheduler.nowNanos() - reading.repliedNanos() <= INPUT_AGE.toNanos())
                        .anyMatch(reading -> reading.value() >= INPUT_SHARE * setVolts);
    }

    /** What the input was read at since the output is taken as off. */
    private Stream<Measured> inputs() {
        return discharge == null
                ? Stream.empty()
                : rails.inputVolts().stream().flatMap(channel -> latest.number(channel, dischargingSince).stream());
    }

    private String inputWords() {
        double volts = inputs().mapToDouble(Measured::value).max().orElse(0);
        return String.format(Locale.ROOT, "%.1f V", volts);
    }

    private void loadsOff() {
        open = loads.size();
        loads.forEach(load -> loadOff(load, 1));
    }

    private void loadOff(InstrumentWorker<? extends Load> load, int number) {
        load.instrument().cutIn(load.instrument().offBytes());
        once(load, () -> loadState(load.instrument()), result -> {
            tell(load.name() + " off", result.words());
            if (!result.isDone() && number < TRIES) {
                loadOff(load, number + 1);
                return;
            }
            if (!result.isDone()) {
                troubles.add(load.name() + " could not be confirmed off");
            }
            oneLess();
        });
    }

    private static Result loadState(Load load) {
        load.cutIn(load.offBytes());
        return load.isOn()
                ? new Result.Refused("the load says that it is still on")
                : new Result.Done("the load is off");
    }

    /** Once the supply says off: before that, nothing but off is said to it. */
    private void remoteOff() {
        Supply instrument = supply.instrument();
        if (!instrument.drivesRemote() && !instrument.hasWatchdog()) {
            return;
        }
        open++;
        Callable<Result> off = () -> {
            instrument.endWatchdog();
            if (instrument.drivesRemote()) {
                instrument.setRemote(false);
            }
            return new Result.Done(instrument.drivesRemote() ? "remote turn-on off" : "watchdog ended");
        };
        once(supply, off, result -> {
            tell(instrument.drivesRemote() ? "remote turn-on" : "watchdog", result.words());
            oneLess();
        });
    }

    /** Asks an instrument and takes the outcome or, after {@link #ANSWER}, its lack; one of them, once. */
    private void once(InstrumentWorker<?> worker, Callable<Result> request, Consumer<Result> then) {
        Chain.Step asked = done -> worker.askFirst(() -> guarded(request), outcome -> done.accept(worded(outcome)));
        Chain.within(scheduler, ANSWER, "no answer", asked).take(then);
    }

    private void oneLess() {
        open--;
        if (open == 0) {
            judge();
        }
    }

    private void end() {
        List<String> words = new ArrayList<>();
        words.add(
                confirmed
                        ? (byHand ? "output off by a person's word" : "output off")
                        : "the supply " + OPEN + "; a person says that it is open");
        words.add(discharge.words());
        words.addAll(troubles);
        boolean off = confirmed && (!byHand || discharge.belowTouch());
        ended = new Ended(off, discharge.belowTouch(), String.join("; ", words));
        states.accept(off ? PowerState.OFF : PowerState.NOT_CONFIRMED);
        tell("switched off", ended.words());
        List<Consumer<Ended>> told = List.copyOf(waiting);
        scheduler.post(() -> told.forEach(then -> then.accept(ended))); // after what a log may have thrown
    }

    private void tell(String what, String words) {
        log.step(scheduler.nowNanos(), what, words);
    }

    /* Whatever an instrument's code throws, switching off goes on. */
    private static Result guarded(Callable<Result> request) {
        try {
            return request.call();
        } catch (Exception e) {
            return new Result.Refused(String.valueOf(e.getMessage()));
        }
    }

    private static Result worded(RequestOutcome<Result> outcome) {
        Result[] found = {new Result.Stopped("no answer")};
        outcome.either(done -> found[0] = done, why -> found[0] = new Result.Refused(why.getMessage()));
        return found[0];
    }
}
