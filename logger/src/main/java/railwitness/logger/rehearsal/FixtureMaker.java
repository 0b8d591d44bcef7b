package railwitness.logger.rehearsal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.rehearsal.Fixture;
import railwitness.drivers.rehearsal.Specimen;
import railwitness.drivers.rehearsal.Stated;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.rehearsal.World;
import railwitness.logger.sheet.Sheets;

/** The instruments of a bench sheet as virtual ones, each as good as the sheet says and no better. */
public final class FixtureMaker {
    private static final double UNKNOWN_VOLTS = 40;
    private static final double UNKNOWN_AMPS = 40;

    private final BenchSheet bench;

    private FixtureMaker(BenchSheet bench) {
        this.bench = bench;
    }

    /**
     * The virtual bench of a rehearsal.
     *
     * @param clock nanoseconds of the session's axis
     */
    public static VirtualBench bench(
            Sheets sheets, Specimen specimen, long seed, java.util.function.LongSupplier clock) {
        BenchSheet sheet = sheets.bench().content();
        return new VirtualBench(new World(specimen, sheet.ambientDegC()), new FixtureMaker(sheet).all(), seed, clock);
    }

    /** The sound unit of the design sheet behind the leads of the bench sheet. */
    public static Specimen specimen(Sheets sheets) {
        Design design = sheets.design().content();
        return SpecimenMaker.of(design, sheets.bench().content().leadResistanceOhms());
    }

    private List<Fixture> all() {
        List<Fixture> fixtures = new ArrayList<>();
        bench.instruments().forEach(instrument -> fixtures.add(fixture(instrument)));
        return fixtures;
    }

    private Fixture fixture(InstrumentSheet sheet) {
        Fixture made = made(sheet)
                .withPort(
                        sheet.port().port(),
                        sheet.dialect().orElse("scpi-1999"),
                        sheet.port().baud(),
                        bench.mainsHz());
        for (Map.Entry<Quantity, Accuracy> stated : sheet.accuracy().entrySet()) {
            made = made.withAccuracy(stated.getKey(), stated(stated.getValue()));
        }
        return sheet.bandHz().size() == 2
                ? made.withBand(sheet.bandHz().get(0), sheet.bandHz().get(1))
                : made;
    }

    private Fixture made(InstrumentSheet sheet) {
        Duty duty = sheet.duty();
        if (duty instanceof Duty.AsSupply supply) {
            Fixture made = Fixture.supply(sheet.name())
                    .withHighest(
                            or(supply.setting().highestVolts(), UNKNOWN_VOLTS),
                            or(supply.setting().highestAmps(), UNKNOWN_AMPS));
            return supply.setting().drivesRemote() ? made.withRemote() : made;
        }
        if (duty instanceof Duty.AsLoad load) {
            return Fixture.load(sheet.name(), load.setting().rail())
                    .withHighest(200, or(load.setting().highestAmps(), UNKNOWN_AMPS));
        }
        String channel = sheet.reads().get(0).toString();
        if (duty instanceof Duty.AsScope) {
            return Fixture.scope(sheet.name(), channel);
        }
        Fixture made = Fixture.meter(sheet.name(), channel);
        OptionalDouble shunt = ((Duty.AsMeter) duty).setting().shuntOhms();
        return shunt.isPresent() ? made.withShunt(shunt.getAsDouble(), sheet.shuntTolerancePct() / 100) : made;
    }

    private Stated stated(Accuracy accuracy) {
        double outside = accuracy.gainHalfWidth(1, bench.ambientDegC());
        double ofRange =
                accuracy.fixedHalfWidth(1, bench.ambientDegC()) - accuracy.fixedHalfWidth(0, bench.ambientDegC());
        return new Stated(
                outside,
                ofRange,
                accuracy.fixedHalfWidth(0, bench.ambientDegC()),
                accuracy.statedAs() == Accuracy.StatedAs.EXPANDED);
    }

    private static double or(OptionalDouble value, double otherwise) {
        return value.orElse(otherwise);
    }
}
