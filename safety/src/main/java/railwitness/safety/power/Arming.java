package railwitness.safety.power;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import railwitness.drivers.instrument.InstrumentWorker;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Supply;

/** The settings of arming, each set and read back. */
final class Arming {
    private static final double LOAD_SHARE = 0.01;
    private static final double LOAD_AMPS = 0.01;
    /** Steps that the bench sheet can state go up to this, V or A. */
    private static final double COARSEST = 1;

    private Arming() {}

    static Optional<String> lacking(Supply supply, Settings wanted) {
        if (wanted.highestVolts() > supply.highestVolts().orElse(Double.POSITIVE_INFINITY)) {
            return Optional.of(number(wanted.highestVolts(), "V") + " is more than the bench sheet allows this supply");
        }
        if (wanted.limitAmps() > supply.highestAmps().orElse(Double.POSITIVE_INFINITY)) {
            return Optional.of(number(wanted.limitAmps(), "A") + " is more than the bench sheet allows this supply");
        }
        boolean whole = supply.hasOverVoltageProtection() && supply.hasOverCurrentProtection();
        return whole
                        || wanted.acceptedWithout()
                                .filter(words -> !words.isBlank())
                                .isPresent()
                ? Optional.empty()
                : Optional.of("this supply has no "
                        + (supply.hasOverVoltageProtection() ? "over-current" : "over-voltage")
                        + " protection, and the bench sheet does not accept that in words:"
                        + " supply_without_protection under [bench] does");
    }

    static Requests requests(
            Requests chain,
            InstrumentWorker<? extends Supply> worker,
            List<InstrumentWorker<? extends Load>> loads,
            Settings wanted,
            Duration silence) {
        Supply supply = worker.instrument();
        chain.step(worker, "output off", () -> supplyOff(supply));
        loads.forEach(load -> chain.step(load, load.name() + " off", () -> loadOff(load.instrument())));
        if (supply.drivesRemote()) {
            chain.step(worker, "remote turn-on", () -> {
                supply.setRemote(false);
                return new Result.Done("remote turn-on off");
            });
        }
        chain.step(worker, "voltage", () -> volts(supply, wanted.startVolts(), wanted.resolutionVolts()));
        chain.step(worker, "current limit", () -> limit(supply, wanted.limitAmps(), wanted.resolutionAmps()));
        chain.step(worker, "over-voltage protection", () -> overVoltage(supply, wanted));
        chain.step(worker, "over-current protection", () -> overCurrent(supply, wanted));
        return supply.hasWatchdog() ? chain.step(worker, "watchdog", () -> watchdog(supply, silence)) : chain;
    }

    private static Result watchdog(Supply supply, Duration silence) {
        int seconds = (int) Math.max(1, (silence.toMillis() + 999) / 1000);
        supply.setWatchdog(seconds);
        return new Result.Done("the supply switches itself off when it hears nothing for " + seconds + " s");
    }

    private static Result supplyOff(Supply supply) {
        supply.switchOff();
        return supply.isOn()
                ? new Result.Refused("told off before arming, but the supply says that it is on: open the disconnect")
                : new Result.Done("output off, read back");
    }

    static Result volts(Supply supply, double volts, double resolution) {
        supply.setVolts(volts);
        return compared("voltage", volts, supply.voltsSetting(), resolution, "V");
    }

    static Result limit(Supply supply, double amps, double resolution) {
        supply.setCurrentLimit(amps);
        return compared("current limit", amps, supply.currentLimitSetting(), resolution, "A");
    }

    private static Result overVoltage(Supply supply, Settings wanted) {
        if (!supply.hasOverVoltageProtection()) {
            return accepted("over-voltage", wanted);
        }
        supply.setOverVoltageProtection(wanted.overVoltageVolts());
        double back = supply.overVoltageProtectionSetting();
        return compared("over-voltage protection", wanted.overVoltageVolts(), back, wanted.resolutionVolts(), "V");
    }

    private static Result overCurrent(Supply supply, Settings wanted) {
        if (!supply.hasOverCurrentProtection()) {
            return accepted("over-current", wanted);
        }
        supply.setOverCurrentProtection(wanted.overCurrentAmps());
        double back = supply.overCurrentProtectionSetting();
        return compared("over-current protection", wanted.overCurrentAmps(), back, wanted.resolutionAmps(), "A");
    }

    private static Result accepted(String which, Settings wanted) {
        return new Result.Done("no " + which + " protection; the bench sheet says: "
                + wanted.acceptedWithout().orElseThrow());
    }

    static Result loadOff(Load load) {
        load.inputOff();
        return load.isOn()
                ? new Result.Refused("told off, but the load says on")
                : new Result.Done("load off, read back");
    }

    static Result loadOn(Load load, double amps) {
        load.setAmps(amps);
        double back = load.setting();
        double resolution =
                Math.max(LOAD_AMPS + LOAD_SHARE * amps, load.resolutionAmps().orElse(0));
        Result set = compared("load", amps, back, resolution, "A");
        if (!set.isDone()) {
            return set;
        }
        if (!load.isOn()) {
            load.inputOn();
        }
        return load.isOn() ? set : new Result.Refused("told on, but the load says off");
    }

    private static Result compared(String what, double wanted, double back, double resolution, String unit) {
        String both = what + " set to " + number(wanted, unit) + ", reads back " + number(back, unit);
        if (Math.abs(wanted - back) <= resolution * (1 + 1e-9)) {
            return new Result.Done(both);
        }
        return Math.abs(wanted - back) > COARSEST
                ? new Result.Refused(both)
                : new Result.Refused(both + ": where it can only be set in such steps, resolution_" + unit
                        + " of this instrument on the bench sheet states them");
    }

    private static String number(double value, String unit) {
        return String.format(Locale.ROOT, "%.3f %s", value, unit);
    }
}
