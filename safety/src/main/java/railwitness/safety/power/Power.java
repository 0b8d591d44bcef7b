package railwitness.safety.power;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.LatestReadings;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.Scheduler;

/**
 * The output of the supply and what hangs on it. Steps are asked for on the scheduler and told their {@link Result} there;
 * each is refused out of its order or while the interlock does not permit. {@link #off} works in every state, as often
 * as it is called, and overtakes everything: whatever was asked for before it and has not ended is Stopped.
 */
public final class Power {
    /** What the person is told, after what could not be switched off. */
    public static final String OPEN = SwitchOff.OPEN;

    private static final Duration USUAL_SILENCE = Duration.ofSeconds(5);

    private final Scheduler scheduler;
    private final InstrumentWorker<? extends Supply> supply;
    private final List<InstrumentWorker<? extends Load>> loads;
    private final Rails rails;
    private final BooleanSupplier permitted;
    private final PowerLog log;
    private final AtomicLong round = new AtomicLong();
    private final LatestReadings latest = new LatestReadings();

    private volatile PowerState state = PowerState.NOT_KNOWN;
    private boolean arming;
    private Settings settings;
    private double setVolts;
    private Duration silence = USUAL_SILENCE;
    private SwitchOff switchOff;

    /**
     * @param permitted asked before every step that brings or raises power, and once more on the instrument's own
     *     thread; the interlock's word, and the guardian's
     */
    public Power(
            Scheduler scheduler,
            InstrumentWorker<? extends Supply> supply,
            List<? extends InstrumentWorker<? extends Load>> loads,
            Rails rails,
            BooleanSupplier permitted,
            PowerLog log) {
        this.scheduler = scheduler;
        this.supply = supply;
        this.loads = List.copyOf(loads);
        this.rails = rails;
        this.permitted = permitted;
        this.log = new LogApart(scheduler, log);
    }

    public PowerState state() {
        return state;
    }

    /** The supply itself says that its output is off, before anything was told to it. */
    public void saidOff() {
        if (state == PowerState.NOT_KNOWN && !arming) {
            state = PowerState.OFF;
        }
    }

    /**
     * How long the supply may hear nothing before it switches itself off, where it can; told to it when it is armed.
     *
     * @param longest longer than the longest time between two questions to it; at least 1 s
     */
    public void silenceAtMost(Duration longest) {
        silence = longest;
    }

    /** The rails since power went off; empty while it may be on. */
    public Optional<Discharge> discharge() {
        return Optional.ofNullable(switchOff).map(SwitchOff::discharge);
    }

    /** The last readings of the run: the one memory of them. */
    public LatestReadings latest() {
        return latest;
    }

    /** Every reading of the run, in every state: what the rails and the input do after power is judged from it. */
    public void heard(Reading reading) {
        latest.heard(reading);
        if (switchOff != null) {
            switchOff.heard(reading);
        }
    }

    /**
     * Output off and read back, loads off, remote turn-on off, then voltage, current limit and protections set, each
     * read back. Refused when the source does not end with the supply, or a protection is lacking and not accepted. When
     * a step fails the output is switched off.
     */
    public void arm(Settings wanted, Consumer<Result> then) {
        Optional<String> against = againstArming(wanted);
        if (against.isPresent()) {
            refuse("arm", against.get(), then);
            return;
        }
        arming = true;
        settings = wanted;
        if (switchOff != null && switchOff.isOver()) {
            switchOff.release(); // what is to come on says nothing of how it went off before
            switchOff = null;
        }
        Requests requests = Arming.requests(requests(), supply, loads, wanted, silence);
        long mine = round.get();
        requests.run(result -> {
            arming = false;
            if (result.isDone() && mine == round.get()) {
                setVolts = wanted.startVolts();
                state = PowerState.ARMED;
            }
            if (result instanceof Result.Refused) {
                off("arming failed: " + result.words(), ended -> {});
            }
            then.accept(result);
        });
    }

    private Optional<String> againstArming(Settings wanted) {
        if (state != PowerState.OFF && state != PowerState.NOT_KNOWN || arming) {
            return Optional.of("arming begins with the output off, it is: " + state.words());
        }
        if (!wanted.source().endsWithTheSupply()) {
            return Optional.of("the source is '" + wanted.source().word()
                    + "': switching the supply off does not end the power; feed the unit from a supply alone");
        }
        return Arming.lacking(supply.instrument(), wanted);
    }

    /** Output on, read back. When that fails the output is switched off. */
    public void on(Consumer<Result> then) {
        if (state != PowerState.ARMED) {
            refuse("output on", "the output comes on only after arming, it is: " + state.words(), then);
            return;
        }
        if (!permits("output on", then)) {
            return;
        }
        state = PowerState.ON;
        Callable<Result> on = () -> {
            supply.instrument().switchOn();
            return saysOn()
                    ? new Result.Done("output on, read back")
                    : new Result.Refused("told on, but the supply says that it is off");
        };
        raising().step(supply, "output on", on).run(result -> {
            if (result instanceof Result.Refused) {
                off("switching on failed: " + result.words(), ended -> {});
            }
            then.accept(result);
        });
    }

    /** Asked once more where its answer is lost. */
    private boolean saysOn() {
        try {
            return supply.instrument().isOn();
        } catch (LineException lost) {
            if (lost.trouble() != LineException.Trouble.NO_ANSWER) {
                throw lost;
            }
            return supply.instrument().isOn();
        }
    }

    /** Output voltage, V, at most the highest that was armed; read back. */
    public void setVolts(double volts, Consumer<Result> then) {
        if (!ready("voltage", volts >= 0 && settings != null && volts <= settings.highestVolts(), volts + " V", then)) {
            return;
        }
        setVolts = Math.max(setVolts, volts);
        Supply instrument = supply.instrument();
        raising()
                .step(supply, "voltage", () -> Arming.volts(instrument, volts, settings.resolutionVolts()))
                .run(result -> {
                    setVolts = result.isDone() ? volts : setVolts;
                    then.accept(result);
                });
    }

    /** Current limit, A, at most the over-current protection that was armed; read back. */
    public void setCurrentLimit(double amps, Consumer<Result> then) {
        boolean inside = amps > 0 && settings != null && amps <= settings.overCurrentAmps();
        if (ready("current limit", inside, amps + " A", then)) {
            Supply instrument = supply.instrument();
            raising()
                    .step(supply, "current limit", () -> Arming.limit(instrument, amps, settings.resolutionAmps()))
                    .run(then);
        }
    }

    /** The unit's remote turn-on line, where the supply drives it. */
    public void remote(boolean on, Consumer<Result> then) {
        if (!supply.instrument().drivesRemote()) {
            refuse("remote turn-on", "this supply does not drive the remote turn-on line: switch it by hand", then);
            return;
        }
        if (on && !ready("remote turn-on", true, "on", then)) {
            return;
        }
        Requests requests = on ? raising() : requests();
        requests.step(supply, "remote turn-on", () -> {
                    supply.instrument().setRemote(on);
                    return new Result.Done("remote turn-on " + (on ? "on" : "off"));
                })
                .run(then);
    }

    /** Constant current on a rail, A; zero switches the load's input off. Read back. */
    public void setLoad(String rail, double amps, Consumer<Result> then) {
        Optional<InstrumentWorker<? extends Load>> load = loads.stream()
                .filter(worker -> worker.instrument().rail().equals(rail))
                .findFirst();
        if (load.isEmpty()) {
            refuse("load", "no load stands on rail " + rail, then);
        } else if (amps == 0) {
            requests()
                    .step(
                            load.get(),
                            rail + " load",
                            () -> Arming.loadOff(load.get().instrument()))
                    .run(then);
        } else if (ready("load", amps > 0 && amps < Double.POSITIVE_INFINITY, amps + " A", then)) {
            raising()
                    .step(
                            load.get(),
                            rail + " load",
                            () -> Arming.loadOn(load.get().instrument(), amps))
                    .run(then);
        }
    }

    /**
     * Switches off: the bytes leave at once, without waiting for a reply in flight. {@code then} is called once, when
     * the loads are off too; the words say what is not. An output that is not confirmed is told off again every second,
     * and its line opened again where it went, until it is confirmed, a person says that the disconnect is open, or
     * {@link #release}. Each further call sends the bytes once more.
     */
    public void off(String reason, Consumer<Ended> then) {
        off(reason, then, SwitchOff::start);
    }

    /** As {@link #off}, at an end that was planned: a person with knobs is asked for it, without an alarm at first. */
    public void offAtTheEnd(String reason, Consumer<Ended> then) {
        off(reason, then, SwitchOff::startCalmly);
    }

    private interface Start {
        void of(SwitchOff off, String reason, Consumer<Ended> then);
    }

    private void off(String reason, Consumer<Ended> then, Start start) {
        round.incrementAndGet();
        if (switchOff != null && !switchOff.isOver()) {
            switchOff.again(reason, then);
            return;
        }
        switchOff = new SwitchOff(scheduler, supply, loads, rails, latest, setVolts, log, next -> state = next);
        start.of(switchOff, reason, then);
    }

    /**
     * The bytes of off and nothing else: for an uncaught exception, when the scheduler no longer runs.
     * From any thread; never waits, never throws. Nothing that was asked for before comes after it. The loads stay on
     * and drain the rails; the guardian switches them off.
     */
    public boolean cutOff() {
        round.incrementAndGet();
        return supply.instrument().cutIn(supply.instrument().offBytes());
    }

    /**
     * {@link #cutOff}, then the supply's own word that it is off: for the task that runs before the serial library
     * closes its ports, because closing throws away what has not left yet. Waits for the supply's worker, not for the
     * scheduler, so the scheduler need not run any more; not to be called on a virtual scheduler.
     *
     * @param longest how long to wait for the answer; without one the whole time is given to the bytes to leave
     * @return true when the supply said that it is off
     */
    public boolean lastWord(Duration longest) {
        cutOff();
        CompletableFuture<Boolean> off = new CompletableFuture<>();
        supply.askFirst(() -> off.complete(!supply.instrument().isOn()), outcome -> {});
        try {
            return off.get(longest.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException | ExecutionException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /**
     * The person at the bench says that the disconnect is open. Without the supply's word that ends the switching off, and
     * is kept in its words.
     */
    public void disconnectOpen() {
        if (switchOff != null) {
            switchOff.disconnectOpen();
        }
    }

    /** Nobody is left at a supply that has only knobs: the switching off ends without being confirmed. */
    public void abandon() {
        if (switchOff != null) {
            switchOff.abandon();
        }
    }

    /** Stops telling a supply off that did not confirm; before the ports are closed. */
    public void release() {
        if (switchOff != null) {
            switchOff.release();
        }
    }

    private Requests requests() {
        return requests(() -> true);
    }

    private Requests raising() {
        return requests(permitted);
    }

    private Requests requests(BooleanSupplier allowed) {
        long mine = round.get();
        return new Requests(
                () -> mine == round.get(), allowed, (what, words) -> log.step(scheduler.nowNanos(), what, words));
    }

    private boolean ready(String what, boolean allowed, String value, Consumer<Result> then) {
        if (state != PowerState.ARMED && state != PowerState.ON) {
            refuse(what, "only while armed or on, it is: " + state.words(), then);
            return false;
        }
        if (!allowed) {
            refuse(what, value + " is outside what was armed", then);
            return false;
        }
        return permits(what, then);
    }

    private boolean permits(String what, Consumer<Result> then) {
        if (!permitted.getAsBoolean()) {
            refuse(what, "the interlock does not permit it", then);
            return false;
        }
        return true;
    }

    private void refuse(String what, String words, Consumer<Result> then) {
        log.step(scheduler.nowNanos(), what, String.format(Locale.ROOT, "refused: %s", words));
        scheduler.post(() -> then.accept(new Result.Refused(words)));
    }
}
