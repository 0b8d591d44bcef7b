package railwitness.drivers.rehearsal;

import java.util.Locale;
import java.util.Random;
import java.util.function.LongSupplier;
import railwitness.drivers.converter.Draw;
import railwitness.drivers.converter.World;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.scpi.Numeric;

/** An electronic load across one rail: constant current or constant resistance. Values are magnitudes. */
public final class VirtualLoad extends VirtualInstrument {
    private static final double HIGHEST_VOLTS = 200;
    private static final double LOWEST_OHM = 0.05;
    private static final double HIGHEST_OHM = 10_000;

    private final Imperfection voltError;
    private final Imperfection ampError;
    private final Imperfection settingError;
    private boolean on;
    private boolean constantOhms;
    private double amps;
    private double ohms;
    private int selected;

    VirtualLoad(Fixture fixture, World world, LongSupplier clock, Random random) {
        super(fixture, world, clock, random);
        world.specimen().railIndex(fixture.rail());
        voltError = new Imperfection(fixture.stated(Quantity.VOLTAGE), random);
        ampError = new Imperfection(fixture.stated(Quantity.CURRENT), random);
        settingError = new Imperfection(fixture.stated(Quantity.CURRENT), random);
        settings();
        switches();
        measurements();
        reset();
    }

    private void settings() {
        commands().command("[SOURce:]CURRent[:LEVel][:IMMediate][:AMPLitude]", call -> {
            amps = call.number(0, 0, fixture().ratings().highestAmps(), 0);
            apply();
        });
        commands().query("[SOURce:]CURRent[:LEVel][:IMMediate][:AMPLitude]?", call -> Numeric.write(amps));
        commands().command("[SOURce:]RESistance[:LEVel][:IMMediate][:AMPLitude]", call -> {
            ohms = call.number(0, LOWEST_OHM, HIGHEST_OHM, HIGHEST_OHM);
            apply();
        });
        commands().query("[SOURce:]RESistance[:LEVel][:IMMediate][:AMPLitude]?", call -> Numeric.write(ohms));
        commands().command("[SOURce:]FUNCtion[:MODE]", call -> {
            constantOhms = ohmic(call.word(0));
            apply();
        });
        commands().query("[SOURce:]FUNCtion[:MODE]?", call -> constantOhms ? "RES" : "CURR");
        commands().command("INSTrument[:NSELect]", call -> selected = (int) call.number(0, 1, 99, 1));
        commands().query("INSTrument[:NSELect]?", call -> Integer.toString(selected));
    }

    private static boolean ohmic(String word) {
        return switch (word.toUpperCase(Locale.ROOT)) {
            case "CURR", "CURRENT", "CC" -> false;
            case "RES", "RESISTANCE", "CR" -> true;
            default -> throw RefusedCommand.illegal(word);
        };
    }

    private void switches() {
        for (String header : new String[] {"INPut[:STATe]", "OUTPut[:STATe]"}) {
            commands().command(header, call -> switchInput(call.onOff(0)));
            commands().query(header + "?", call -> on && !troubles().has(Trouble.SAYS_OFF) ? "1" : "0");
        }
        commands().query("INPut:MODE?", call -> mode());
    }

    private void measurements() {
        commands().query("MEASure[:SCALar]:VOLTage[:DC]?", call -> {
            busy(0.02);
            return measurement(voltError.shown(volts(), HIGHEST_VOLTS, 1e-3), HIGHEST_VOLTS);
        });
        commands().query("MEASure[:SCALar]:CURRent[:DC]?", call -> {
            busy(0.02);
            double range = fixture().ratings().highestAmps();
            return measurement(ampError.shown(drawnAmps(), range, 1e-4), 2 * range);
        });
        commands().query("MEASure[:SCALar]:POWer[:DC]?", call -> {
            busy(0.02);
            return measurement(volts() * drawnAmps(), 1e9);
        });
        commands().query("STATus:QUEStionable:CONDition?", call -> holds() ? "0" : "2");
        commands().query("STATus:QUEStionable[:EVENt]?", call -> holds() ? "0" : "2");
    }

    private void switchInput(boolean wanted) {
        if (!wanted && ignoresOff()) {
            return;
        }
        on = wanted;
        apply();
    }

    private boolean ignoresOff() {
        boolean once = troubles().has(Trouble.IGNORES_OFF_ONCE);
        troubles().end(Trouble.IGNORES_OFF_ONCE);
        return once || troubles().has(Trouble.IGNORES_OFF);
    }

    private Draw draw() {
        if (!on) {
            return Draw.NONE;
        }
        if (constantOhms) {
            return Draw.ohms(Math.max(LOWEST_OHM, ohms));
        }
        return Draw.amps(
                amps == 0
                        ? 0
                        : Math.max(
                                0, settingError.given(amps, fixture().ratings().highestAmps())));
    }

    private void apply() {
        world().draw(nowNanos(), fixture().rail(), fixture().name(), draw());
    }

    private double volts() {
        return Math.abs(world().at(nowNanos()).rail(fixture().rail()).volts());
    }

    private double drawnAmps() {
        return draw().at(volts());
    }

    /** False when the rail is too low for the current set. */
    private boolean holds() {
        return !on || constantOhms || amps == 0 || volts() >= Draw.HOLDS_FROM_VOLTS;
    }

    private String mode() {
        if (!on || troubles().has(Trouble.SAYS_OFF)) {
            return "OFF";
        }
        return holds() ? constantOhms ? "CR" : "CC" : "UNREG";
    }

    @Override
    void reset() {
        on = false;
        constantOhms = false;
        amps = 0;
        ohms = HIGHEST_OHM;
        selected = 1;
        apply();
    }
}
