package railwitness.safety.power;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.drivers.bench.Source;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.InlineWorker;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.VirtualScheduler;

/** Supply, two loads and a unit on the virtual clock, polled four times a second. */
final class StandInBench implements PowerLog {
    final VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
    final StandInUnit unit = new StandInUnit(scheduler);
    final StandInSupply supply = new StandInSupply(scheduler, unit);
    final StandInLoad plus = new StandInLoad(scheduler, unit, "plus");
    final StandInLoad minus = new StandInLoad(scheduler, unit, "minus");
    final List<String> steps = new ArrayList<>();
    final List<String> alarms = new ArrayList<>();
    final List<String> over = new ArrayList<>();
    final Power power;

    boolean permitted = true;
    Consumer<Reading> also = reading -> {};
    Consumer<Set<Condition>> alsoState = conditions -> {};
    boolean reversedInput;
    /** Throws once, when so many steps were told; never for a negative one. */
    int throwsAtStep = -1;

    StandInBench() {
        InstrumentWorker<StandInSupply> first = worker(supply);
        List<InstrumentWorker<StandInLoad>> loads = List.of(worker(plus), worker(minus));
        Rails rails = new Rails(
                List.of(Channel.of("plus.voltage"), Channel.of("minus.voltage")), List.of(StandInSupply.VOLTS), 5);
        power = new Power(scheduler, first, loads, rails, () -> permitted, this);
        poll(first);
        loads.forEach(this::poll);
    }

    private <I extends Instrument> InstrumentWorker<I> worker(I instrument) {
        PeerLine line = new PeerLine(instrument.name(), message -> Answer.silence(Duration.ZERO), scheduler);
        return new InlineWorker<>(instrument, scheduler, line);
    }

    private void poll(InstrumentWorker<? extends Instrument> worker) {
        worker.ask(() -> worker.instrument().poll(), outcome -> outcome.either(this::heard, why -> {}));
        scheduler.after(Duration.ofMillis(250), () -> poll(worker));
    }

    private void heard(PollResult pollResult) {
        for (Reading reading : pollResult.readings()) {
            also.accept(reading);
            power.heard(reading);
        }
        if (pollResult.instrument().equals("supply")) {
            alsoState.accept(pollResult.conditions());
            if (reversedInput) {
                long now = scheduler.nowNanos();
                also.accept(new Measured(Channel.of("input.voltage"), -unit.inputVolts(), now, now));
            }
        }
    }

    static Settings settings() {
        return new Settings(Source.SUPPLY, 13.8, 14.4, 5, 16, 30, 0.01, 0.01, Optional.empty());
    }

    Result arm() {
        return await(power::arm, settings());
    }

    Result on() {
        Result[] result = new Result[1];
        power.on(done -> result[0] = done);
        scheduler.runUntil(() -> result[0] != null);
        return result[0];
    }

    /** Armed, on, remote on, both rails loaded. */
    StandInBench running() {
        arm();
        on();
        await((on, then) -> power.remote(on, then), true);
        await((amps, then) -> power.setLoad("plus", amps, then), 2.0);
        await((amps, then) -> power.setLoad("minus", amps, then), 2.0);
        pass(1);
        return this;
    }

    Ended off() {
        Ended[] ended = new Ended[1];
        power.off("end of the run", words -> ended[0] = words);
        scheduler.runUntil(() -> ended[0] != null);
        return ended[0];
    }

    void pass(double seconds) {
        long until = scheduler.nowNanos() + (long) (seconds * 1e9);
        scheduler.runUntil(() -> scheduler.nowNanos() >= until);
    }

    interface Asking<T> {
        void ask(T value, Consumer<Result> then);
    }

    <T> Result await(Asking<T> asking, T value) {
        Result[] result = new Result[1];
        asking.ask(value, done -> result[0] = done);
        scheduler.runUntil(() -> result[0] != null);
        return result[0];
    }

    @Override
    public void step(long atNanos, String what, String words) {
        steps.add(what + ": " + words);
        if (steps.size() == throwsAtStep) {
            throw new IllegalStateException("made for the test");
        }
    }

    @Override
    public void alarm(long atNanos, String words) {
        alarms.add(words);
    }

    @Override
    public void alarmOver(long atNanos, String words) {
        over.add(words);
    }
}
