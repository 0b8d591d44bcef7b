package railwitness.safety.power;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.time.VirtualScheduler;

/** A supply made by hand, with the troubles a real one can have. Each call takes 20 ms, a silent one a second. */
final class StandInSupply implements Supply {
    static final Channel VOLTS = Channel.of("supply.voltage");
    static final Channel AMPS = Channel.of("supply.current");

    private final VirtualScheduler scheduler;
    private final StandInUnit unit;
    final List<String> did = new ArrayList<>();

    int ignoresOff;
    boolean dead;
    boolean lost;
    boolean watchdog;
    boolean portBack;
    boolean saysOff;
    boolean refusesOn;
    boolean readsBackWrong;
    boolean hasProtection = true;
    Set<Condition> conditions = Set.of();
    double limit;
    double overVolts;
    double overAmps;

    StandInSupply(VirtualScheduler scheduler, StandInUnit unit) {
        this.scheduler = scheduler;
        this.unit = unit;
    }

    private void exchange(String what) {
        did.add(what);
        if (lost) {
            throw LineException.unplugged("supply", what);
        }
        scheduler.spend(dead ? Duration.ofSeconds(1) : Duration.ofMillis(20));
        if (dead) {
            throw new LineException(LineException.Trouble.NO_ANSWER, "supply: no answer in 1 s to " + what, what, "");
        }
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        did.add("off bytes");
        if (!dead && !lost) {
            offTold();
        }
        return !lost;
    }

    @Override
    public boolean hasWatchdog() {
        return watchdog;
    }

    @Override
    public void setWatchdog(int seconds) {
        exchange("watchdog " + seconds);
    }

    @Override
    public void endWatchdog() {
        if (watchdog) {
            exchange("watchdog off");
        }
    }

    @Override
    public void reconnect() {
        did.add("reconnect");
        if (!portBack) {
            throw LineException.unplugged("supply", "");
        }
        lost = false;
    }

    private void offTold() {
        if (ignoresOff > 0) {
            ignoresOff--;
        } else {
            unit.output(false);
        }
    }

    @Override
    public void switchOn() {
        exchange("on");
        unit.output(!refusesOn);
    }

    @Override
    public void switchOff() {
        exchange("off");
        offTold();
    }

    @Override
    public boolean isOn() {
        exchange("on?");
        return unit.output && !saysOff;
    }

    @Override
    public void setVolts(double volts) {
        exchange("volts");
        unit.volts = volts;
    }

    @Override
    public double voltsSetting() {
        exchange("volts?");
        return readsBackWrong ? unit.volts + 1 : unit.volts;
    }

    @Override
    public void setCurrentLimit(double amps) {
        exchange("limit");
        limit = amps;
    }

    @Override
    public double currentLimitSetting() {
        exchange("limit?");
        return limit;
    }

    @Override
    public boolean hasOverVoltageProtection() {
        return hasProtection;
    }

    @Override
    public void setOverVoltageProtection(double volts) {
        exchange("ovp");
        overVolts = volts;
    }

    @Override
    public double overVoltageProtectionSetting() {
        exchange("ovp?");
        return overVolts;
    }

    @Override
    public boolean hasOverCurrentProtection() {
        return hasProtection;
    }

    @Override
    public void setOverCurrentProtection(double amps) {
        exchange("ocp");
        overAmps = amps;
    }

    @Override
    public double overCurrentProtectionSetting() {
        exchange("ocp?");
        return overAmps;
    }

    @Override
    public byte[] offBytes() {
        return "\nOUTP OFF\n".getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public byte[] askOnBytes() {
        return "OUTP?\n".getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public boolean drivesRemote() {
        return true;
    }

    @Override
    public void setRemote(boolean on) {
        exchange("remote " + on);
        unit.remote = on;
    }

    @Override
    public OptionalDouble highestVolts() {
        return OptionalDouble.of(20);
    }

    @Override
    public OptionalDouble highestAmps() {
        return OptionalDouble.of(40);
    }

    @Override
    public String name() {
        return "supply";
    }

    @Override
    public Identity identity() {
        return new Identity("0", "0", "0", "0");
    }

    @Override
    public PollResult poll() {
        long asked = scheduler.nowNanos();
        try {
            exchange("poll");
        } catch (LineException e) {
            Reading missing = new Missing(VOLTS, e.getMessage(), asked, scheduler.nowNanos());
            return new PollResult("supply", List.of(missing), Set.of());
        }
        long replied = scheduler.nowNanos();
        return new PollResult(
                "supply",
                List.of(
                        new Measured(VOLTS, unit.inputVolts(), asked, replied),
                        new Measured(AMPS, unit.inputAmps(), asked, replied)),
                conditions);
    }
}
