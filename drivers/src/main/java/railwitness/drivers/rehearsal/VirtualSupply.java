package railwitness.drivers.rehearsal;

import java.util.Random;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.Feed;
import railwitness.drivers.converter.World;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.scpi.Numeric;

/**
 * A supply with two outputs. The first feeds the unit through the leads; the second, or a relay, can drive its remote
 * turn-on line. Protections trip on the first output and hold until they are cleared.
 */
public final class VirtualSupply extends VirtualInstrument {
    private static final double REMOTE_FROM_VOLTS = 3;
    private static final double OVER_CURRENT_DELAY_SECONDS = 0.02;
    private static final double TRIP_MARGIN = 1.1;

    /** Settings of one output. */
    private static final class Output {
        private double volts;
        private double amps;
        private boolean on;
    }

    private final Output main = new Output();
    private final Output second = new Output();
    private final double highestVolts;
    private final double highestAmps;
    private final int mainChannel;
    private final Imperfection voltError;
    private final Imperfection ampError;
    private Consumer<Boolean> onSwitched = on -> {};
    private boolean relay;
    private int selected;
    private double overVolts;
    private double overAmps;
    private boolean overVoltsTripped;
    private boolean overAmpsTripped;
    private double overAmpsSince = Double.NaN;

    VirtualSupply(Fixture fixture, World world, LongSupplier clock, Random random) {
        super(fixture, world, clock, random);
        highestVolts = fixture.ratings().highestVolts();
        highestAmps = fixture.ratings().highestAmps();
        mainChannel = fixture.ratings().channel();
        voltError = new Imperfection(fixture.stated(Quantity.VOLTAGE), random);
        ampError = new Imperfection(fixture.stated(Quantity.CURRENT), random);
        settings();
        switches();
        measurements();
        reset();
        world.watch(this::protect);
    }

    private void settings() {
        commands().command("[SOURce:]VOLTage[:LEVel][:IMMediate][:AMPLitude]", call -> {
            output(call).volts = call.number(0, 0, highestVolts, 0);
            apply();
        });
        commands()
                .query("[SOURce:]VOLTage[:LEVel][:IMMediate][:AMPLitude]?", call -> Numeric.write(output(call).volts));
        commands().command("[SOURce:]CURRent[:LEVel][:IMMediate][:AMPLitude]", call -> {
            output(call).amps = call.number(0, 0, highestAmps, highestAmps);
            apply();
        });
        commands().query("[SOURce:]CURRent[:LEVel][:IMMediate][:AMPLitude]?", call -> Numeric.write(output(call).amps));
        for (String limit : new String[] {"PROTection[:LEVel]", "LIMit[:LEVel]"}) {
            commands().command("[SOURce:]VOLTage:" + limit, call -> {
                overVolts = call.number(0, 0, TRIP_MARGIN * highestVolts, TRIP_MARGIN * highestVolts);
            });
            commands().query("[SOURce:]VOLTage:" + limit + "?", call -> Numeric.write(overVolts));
            commands().command("[SOURce:]CURRent:" + limit, call -> {
                overAmps = call.number(0, 0, TRIP_MARGIN * highestAmps, TRIP_MARGIN * highestAmps);
            });
            commands().query("[SOURce:]CURRent:" + limit + "?", call -> Numeric.write(overAmps));
        }
        commands().command("INSTrument[:NSELect]", call -> selected = checkedChannel((int) call.number(0, 1, 99, 1)));
        commands().query("INSTrument[:NSELect]?", call -> Integer.toString(selected));
    }

    private void switches() {
        commands().command("OUTPut[:STATe]", this::switchOutput);
        commands().query("OUTPut[:STATe]?", call -> saidOn(call) ? "1" : "0");
        commands().command("OUTPut:RELay[:STATe]", call -> {
            relay = call.onOff(0);
            apply();
        });
        commands().query("OUTPut:RELay[:STATe]?", call -> relay ? "1" : "0");
        commands().query("OUTPut:MODE?", call -> mode());
        commands().command("OUTPut:PROTection:CLEar", call -> clearTrips());
        commands().command("[SOURce:]VOLTage:PROTection:CLEar", call -> clearTrips());
        commands().command("[SOURce:]CURRent:PROTection:CLEar", call -> clearTrips());
        commands().query("[SOURce:]VOLTage:PROTection:TRIPped?", call -> overVoltsTripped ? "1" : "0");
        commands().query("[SOURce:]CURRent:PROTection:TRIPped?", call -> overAmpsTripped ? "1" : "0");
    }

    private void measurements() {
        commands()
                .query(
                        "MEASure[:SCALar]:VOLTage[:DC]?",
                        call -> measurement(
                                isMain(call) ? shownVolts() : second.on ? second.volts : 0, 2 * highestVolts));
        commands()
                .query(
                        "MEASure[:SCALar]:CURRent[:DC]?",
                        call -> measurement(isMain(call) ? shownAmps() : 0, 2 * highestAmps));
        commands()
                .query(
                        "MEASure[:SCALar]:POWer[:DC]?",
                        call -> measurement(isMain(call) ? shownVolts() * shownAmps() : 0, 1e9));
        commands().query("STATus:QUEStionable:CONDition?", call -> Integer.toString(questionable()));
        commands().query("STATus:QUEStionable[:EVENt]?", call -> Integer.toString(questionable()));
        commands()
                .query(
                        "STATus:QUEStionable:INSTrument:ISUMmary#:CONDition?",
                        call -> Integer.toString(call.numbers().get(0) == mainChannel ? questionable() : 0));
    }

    private Output output(Call call) {
        return isMain(call) ? main : second;
    }

    private boolean isMain(Call call) {
        return checkedChannel(call.channel().orElse(selected)) == mainChannel;
    }

    private int checkedChannel(int channel) {
        if (channel != mainChannel
                && channel != fixture().ratings().remoteChannel().orElse(mainChannel == 1 ? 2 : 1)) {
            throw RefusedCommand.range("channel " + channel);
        }
        return channel;
    }

    private void switchOutput(Call call) {
        boolean on = call.onOff(0);
        if (isMain(call) && !on && ignoresOff()) {
            return;
        }
        if (isMain(call) && on && (overVoltsTripped || overAmpsTripped)) {
            throw RefusedCommand.conflict("protection tripped");
        }
        Output output = output(call);
        boolean changed = output.on != on;
        output.on = on;
        apply();
        if (changed && isMain(call)) {
            onSwitched.accept(on);
        }
    }

    private boolean ignoresOff() {
        if (troubles().has(Trouble.IGNORES_OFF)) {
            return true;
        }
        boolean once = troubles().has(Trouble.IGNORES_OFF_ONCE);
        troubles().end(Trouble.IGNORES_OFF_ONCE);
        return once;
    }

    private boolean saidOn(Call call) {
        return isMain(call) ? main.on && !troubles().has(Trouble.SAYS_OFF) : second.on;
    }

    /** Whether the first output is on in truth. */
    public boolean isOn() {
        synchronized (world()) {
            return main.on;
        }
    }

    /** Called with true or false when the first output goes on or off, by command or by a protection. */
    public void onSwitched(Consumer<Boolean> listener) {
        synchronized (world()) {
            onSwitched = listener;
        }
    }

    private void apply() {
        world().feed(nowNanos(), feed());
        if (fixture().ratings().remoteChannel().isPresent()) {
            world().remote(nowNanos(), relay || second.on && second.volts >= REMOTE_FROM_VOLTS);
        }
    }

    private Feed feed() {
        double volts = Math.max(0, voltError.given(main.volts, highestVolts));
        double amps = Math.max(0.001, ampError.given(main.amps, highestAmps));
        return new Feed(main.on, volts, amps);
    }

    /** Runs at every step of the world: the protections look at the supply's own terminals. */
    private void protect(World world) {
        if (!main.on) {
            return;
        }
        Balance state = world.now();
        double amps = suppliedAmps(state);
        if (terminalVolts(state) > overVolts) {
            overVoltsTripped = true;
        }
        boolean over = amps > overAmps * 1.001;
        overAmpsSince = over ? (Double.isNaN(overAmpsSince) ? world.nowSeconds() : overAmpsSince) : Double.NaN;
        if (over && world.nowSeconds() - overAmpsSince >= OVER_CURRENT_DELAY_SECONDS) {
            overAmpsTripped = true;
        }
        if (overVoltsTripped || overAmpsTripped) {
            main.on = false;
            world.feedNow(feed());
            onSwitched.accept(false);
        }
    }

    private double suppliedAmps(Balance state) {
        return main.on && !world().disconnected()
                ? Math.max(0, world().feed().amps(state.terminalVolts(), world().leadOhm()))
                : 0;
    }

    private double terminalVolts(Balance state) {
        return main.on && world().disconnected()
                ? main.volts
                : state.terminalVolts() + suppliedAmps(state) * world().leadOhm();
    }

    private double shownVolts() {
        busy(0.02);
        double range = highestVolts;
        return voltError.shown(terminalVolts(world().at(nowNanos())), range, 1e-3);
    }

    private double shownAmps() {
        busy(0.02);
        double range = highestAmps;
        return ampError.shown(suppliedAmps(world().at(nowNanos())), range, 1e-3);
    }

    private boolean limiting() {
        return main.on && world().at(nowNanos()).limiting();
    }

    private int questionable() {
        return (limiting() ? 1 : 0) + (overVoltsTripped ? 512 : 0) + (overAmpsTripped ? 1024 : 0);
    }

    private String mode() {
        if (overVoltsTripped || overAmpsTripped) {
            return overVoltsTripped ? "OV" : "OC";
        }
        if (!main.on || troubles().has(Trouble.SAYS_OFF)) {
            return "OFF";
        }
        return limiting() ? "CC" : "CV";
    }

    private void clearTrips() {
        overVoltsTripped = false;
        overAmpsTripped = false;
        overAmpsSince = Double.NaN;
    }

    @Override
    void reset() {
        boolean wasOn = main.on;
        for (Output output : new Output[] {main, second}) {
            output.on = false;
            output.volts = 0;
        }
        main.amps = highestAmps;
        second.amps = 1;
        relay = false;
        selected = mainChannel;
        overVolts = TRIP_MARGIN * highestVolts;
        overAmps = TRIP_MARGIN * highestAmps;
        clearTrips();
        apply();
        if (wasOn) {
            onSwitched.accept(false);
        }
    }
}
