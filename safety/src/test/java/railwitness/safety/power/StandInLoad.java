package railwitness.safety.power;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import railwitness.drivers.instrument.Identity;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.time.VirtualScheduler;

/** A load made by hand that also reads its rail's voltage. */
final class StandInLoad implements Load {
    private final VirtualScheduler scheduler;
    private final StandInUnit unit;
    private final String rail;
    final List<String> did = new ArrayList<>();

    boolean dead;
    boolean on;
    double amps;

    StandInLoad(VirtualScheduler scheduler, StandInUnit unit, String rail) {
        this.scheduler = scheduler;
        this.unit = unit;
        this.rail = rail;
    }

    private void exchange(String what) {
        did.add(what);
        scheduler.spend(dead ? Duration.ofSeconds(1) : Duration.ofMillis(20));
        if (dead) {
            throw new LineException(LineException.Trouble.NO_ANSWER, rail + " load: no answer in 1 s", what, "");
        }
    }

    private void apply() {
        unit.load(rail, on ? amps : 0);
    }

    @Override
    public String rail() {
        return rail;
    }

    @Override
    public void setAmps(double wanted) {
        exchange("amps");
        amps = wanted;
        apply();
    }

    @Override
    public void setOhms(double ohms) {
        exchange("ohms");
    }

    @Override
    public double setting() {
        exchange("amps?");
        return amps;
    }

    @Override
    public void inputOn() {
        exchange("on");
        on = true;
        apply();
    }

    @Override
    public void inputOff() {
        exchange("off");
        on = false;
        apply();
    }

    @Override
    public boolean isOn() {
        exchange("on?");
        return on;
    }

    @Override
    public byte[] offBytes() {
        return new byte[] {'\n'};
    }

    @Override
    public String name() {
        return rail + " load";
    }

    @Override
    public Identity identity() {
        return new Identity("0", "0", "0", "0");
    }

    @Override
    public PollResult poll() {
        long asked = scheduler.nowNanos();
        scheduler.spend(Duration.ofMillis(20));
        Channel channel = Channel.of(rail + ".voltage");
        return new PollResult(
                name(), List.of(new Measured(channel, unit.rail(rail), asked, scheduler.nowNanos())), Set.of());
    }

    @Override
    public boolean cutIn(byte[] bytes) {
        did.add("off bytes");
        if (!dead) {
            on = false;
            apply();
        }
        return !dead;
    }
}
