package railwitness.drivers.rehearsal;

import java.util.List;
import java.util.OptionalInt;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.LoadSetting;
import railwitness.drivers.instrument.MeterSetting;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.reading.Accuracy;

/** Makes the fixtures of a virtual bench from a bench sheet. */
public final class BenchFixtures {
    private static final double UNSTATED_VOLTS = 40;
    private static final double UNSTATED_AMPS = 100;
    private static final double WIDEST_BAND_HZ = 300_000;

    private BenchFixtures() {}

    /** One fixture for each instrument of the sheet, in its order. */
    public static List<Fixture> of(BenchSheet sheet) {
        return sheet.instruments().stream()
                .map(instrument -> of(instrument, sheet.ambientDegC(), sheet.mainsHz()))
                .toList();
    }

    /** An accuracy of the sheets as the virtual bench draws errors from, at the room's temperature. */
    public static Stated stated(Accuracy accuracy, double ambientDegC) {
        double offset = accuracy.fixedHalfWidth(0, ambientDegC);
        return new Stated(
                accuracy.gainHalfWidth(1, ambientDegC),
                accuracy.fixedHalfWidth(1, ambientDegC) - offset,
                offset,
                accuracy.statedAs() == Accuracy.StatedAs.EXPANDED);
    }

    private static Fixture of(InstrumentSheet sheet, double ambientDegC, double mainsHz) {
        Fixture fixture = wired(sheet, mainsHz).withTalk(talk(sheet));
        for (var entry : sheet.accuracy().entrySet()) {
            fixture = fixture.withAccuracy(entry.getKey(), stated(entry.getValue(), ambientDegC));
        }
        return fixture;
    }

    private static Fixture.Talk talk(InstrumentSheet sheet) {
        String dialect = sheet.dialect().orElse("scpi-1999");
        String own = dialect.contains("remote") ? "\r\n" : "\n";
        String terminator = sheet.terminatorStated() ? sheet.port().terminator() : own;
        return new Fixture.Talk(
                sheet.port().port(), dialect, terminator, sheet.port().baud());
    }

    private static Fixture wired(InstrumentSheet sheet, double mainsHz) {
        if (sheet.duty() instanceof Duty.AsSupply supply) {
            return Fixture.supply(sheet.name()).withRatings(ratings(supply.setting()));
        }
        if (sheet.duty() instanceof Duty.AsLoad load) {
            return Fixture.load(sheet.name(), load.setting().rail()).withRatings(ratings(load.setting()));
        }
        if (sheet.duty() instanceof Duty.AsScope scope) {
            return Fixture.scope(sheet.name(), scope.setting().reads().toString());
        }
        if (sheet.duty() instanceof Duty.AsMeter meter) {
            return Fixture.meter(sheet.name(), meter.setting().reads().toString())
                    .withLeads(leads(sheet, meter.setting(), mainsHz));
        }
        throw new IllegalArgumentException("no virtual instrument stands in for " + sheet.duty());
    }

    private static Fixture.Ratings ratings(SupplySetting setting) {
        OptionalInt remote = setting.drivesRemote() ? OptionalInt.of(setting.remoteChannel()) : OptionalInt.empty();
        return new Fixture.Ratings(
                setting.highestVolts().orElse(UNSTATED_VOLTS),
                setting.highestAmps().orElse(UNSTATED_AMPS),
                setting.channel(),
                remote);
    }

    private static Fixture.Ratings ratings(LoadSetting setting) {
        return new Fixture.Ratings(
                UNSTATED_VOLTS, setting.highestAmps().orElse(UNSTATED_AMPS), setting.channel(), OptionalInt.empty());
    }

    private static Fixture.Leads leads(InstrumentSheet sheet, MeterSetting setting, double mainsHz) {
        boolean band = sheet.bandHz().size() == 2;
        return new Fixture.Leads(
                setting.shuntOhms().orElse(0),
                sheet.shuntTolerancePct() / 100,
                band ? sheet.bandHz().get(0) : 20,
                band ? sheet.bandHz().get(1) : WIDEST_BAND_HZ,
                mainsHz);
    }
}
