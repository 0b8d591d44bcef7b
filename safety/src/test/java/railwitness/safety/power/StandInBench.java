package railwitness.safety.power;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.InlineStation;
import railwitness.drivers.instrument.Instrument;
import railwitness.drivers.instrument.Station;
import railwitness.drivers.instrument.Sweep;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.VirtualAgenda;
import railwitness.safety.caution.Source;

/** Supply, two loads and a unit on the virtual clock, polled four times a second. */
final class StandInBench implements PowerLog {
    final VirtualAgenda agenda = new VirtualAgenda(Instant.parse("2026-11-25T10:00:00Z"));
    final StandInUnit unit = new StandInUnit(agenda);
    final StandInSupply supply = new StandInSupply(agenda, unit);
    final StandInLoad plus = new StandInLoad(agenda, unit, "plus");
    final StandInLoad minus = new StandInLoad(agenda, unit, "minus");
    final List<String> steps = new ArrayList<>();
    final List<String> alarms = new ArrayList<>();
    final List<String> over = new ArrayList<>();
    final Power power;

    boolean permitted = true;
    Consumer<Reading> also = reading -> {};
    Consumer<Set<Condition>> alsoState = conditions -> {};
    boolean reversedInput;

    StandInBench() {
        Station<StandInSupply> first = station(supply);
        List<Station<StandInLoad>> loads = List.of(station(plus), station(minus));
        Rails rails = new Rails(
                List.of(Channel.of("plus.voltage"), Channel.of("minus.voltage")), List.of(StandInSupply.VOLTS), 5);
        power = new Power(agenda, first, loads, rails, () -> permitted, this);
        poll(first);
        loads.forEach(this::poll);
    }

    private <I extends Instrument> Station<I> station(I instrument) {
        PeerLine line = new PeerLine(instrument.name(), message -> Answer.silence(Duration.ZERO), agenda);
        return new InlineStation<>(instrument, agenda, line);
    }

    private void poll(Station<? extends Instrument> station) {
        station.ask(() -> station.instrument().poll(), outcome -> outcome.either(this::heard, why -> {}));
        agenda.after(Duration.ofMillis(250), () -> poll(station));
    }

    private void heard(Sweep sweep) {
        for (Reading reading : sweep.readings()) {
            also.accept(reading);
            power.heard(reading);
        }
        if (sweep.instrument().equals("supply")) {
            alsoState.accept(sweep.conditions());
            if (reversedInput) {
                long now = agenda.nowNanos();
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
        agenda.runUntil(() -> result[0] != null);
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
        agenda.runUntil(() -> ended[0] != null);
        return ended[0];
    }

    void pass(double seconds) {
        long until = agenda.nowNanos() + (long) (seconds * 1e9);
        agenda.runUntil(() -> agenda.nowNanos() >= until);
    }

    interface Asking<T> {
        void ask(T value, Consumer<Result> then);
    }

    <T> Result await(Asking<T> asking, T value) {
        Result[] result = new Result[1];
        asking.ask(value, done -> result[0] = done);
        agenda.runUntil(() -> result[0] != null);
        return result[0];
    }

    @Override
    public void step(long atNanos, String what, String words) {
        steps.add(what + ": " + words);
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
