package railwitness.drivers.rehearsal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.LongSupplier;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.bench.Source;
import railwitness.drivers.converter.Draw;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.Surroundings;
import railwitness.drivers.converter.World;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.instrument.SupplySetting;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineOpener;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.reading.Accuracy;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.drivers.winding.Coil;
import railwitness.drivers.winding.Connected;
import railwitness.drivers.winding.Hookup;

/**
 * A bench of virtual instruments around one virtual unit. Each seed draws every instrument's errors from within its
 * stated accuracy; the same seed gives the same bench.
 */
public final class VirtualBench {
    private static final double LEAST_LEAD_OHM = 5e-4;
    private static final double BATTERY_VOLTS = 12.7;
    private static final double LOWEST_HAND_HZ = 20;
    private static final double HIGHEST_HAND_HZ = 100_000;
    private static final double HAND_DIGITS = 4000;
    /** Last digit of a display whose steps the sheet does not state, V and A. */
    private static final double USUAL_STEP = 0.1;

    private final World world;
    private final LongSupplier clock;
    private final long seed;
    private final Map<String, Imperfection> handErrors = new HashMap<>();
    private final Random hands;
    private double knobVolts = USUAL_STEP;
    private double knobAmps = USUAL_STEP;
    private Coil coil;
    private Coil.Drive drive;
    private double ring;
    private double thermal;
    private final Map<String, VirtualInstrument> byPort = new LinkedHashMap<>();

    /**
     * @param world the unit all instruments look at
     * @param fixtures the instruments, each on a port of its own
     * @param clock nanoseconds of the session's axis
     */
    public VirtualBench(World world, List<Fixture> fixtures, long seed, LongSupplier clock) {
        this.world = world;
        this.clock = clock;
        this.seed = seed;
        this.hands = random("hands");
        for (Fixture fixture : fixtures) {
            VirtualInstrument made = make(fixture, random(fixture.name()));
            made.ofBench(seed);
            if (byPort.put(fixture.port(), made) != null) {
                throw new IllegalArgumentException("two instruments are on port '" + fixture.port() + "'");
            }
        }
    }

    /**
     * The bench of a sheet around a unit.
     *
     * @param healthy the unit; its lead resistance is taken from the sheet
     * @param faults what is wrong with it
     * @param seed draws the instruments' errors
     * @param clock nanoseconds of the session's axis
     */
    public static VirtualBench of(
            Specimen healthy, List<Fault> faults, BenchSheet sheet, long seed, LongSupplier clock) {
        return of(healthy, faults, sheet, seed, clock, Surroundings.still(sheet.ambientDegC()));
    }

    /** The same in a room of its own, with parts that wear. */
    public static VirtualBench of(
            Specimen healthy,
            List<Fault> faults,
            BenchSheet sheet,
            long seed,
            LongSupplier clock,
            Surroundings surroundings) {
        Specimen.Input input = healthy.input();
        Specimen specimen = healthy.withInput(new Specimen.Input(
                Math.max(LEAST_LEAD_OHM, sheet.leadResistanceOhms()), input.capacitorFarad(), input.capacitorEsrOhm()));
        for (Fault fault : faults) {
            specimen = fault.in(specimen);
        }
        World world = new World(specimen, surroundings);
        if (sheet.source() != Source.SUPPLY) {
            world.battery(BATTERY_VOLTS);
        }
        VirtualBench bench = new VirtualBench(world, BenchFixtures.of(sheet), seed, clock);
        sheet.instruments().stream().filter(InstrumentSheet::isByHand).forEach(bench::knobsOf);
        return bench;
    }

    private void knobsOf(InstrumentSheet sheet) {
        SupplySetting setting = ((Duty.AsSupply) sheet.duty()).setting();
        knobVolts = setting.resolutionVolts().orElse(USUAL_STEP);
        knobAmps = setting.resolutionAmps().orElse(USUAL_STEP);
    }

    private VirtualInstrument make(Fixture fixture, Random random) {
        return switch (fixture.kind()) {
            case SUPPLY -> new VirtualSupply(fixture, world, clock, random);
            case METER -> new VirtualMeter(fixture, world, clock, random);
            case LOAD -> new VirtualLoad(fixture, world, clock, random);
            case SCOPE -> new VirtualScope(fixture, world, clock, random);
        };
    }

    public World world() {
        return world;
    }

    /** Instruments in the order of the bench. */
    public List<VirtualInstrument> instruments() {
        return new ArrayList<>(byPort.values());
    }

    /** The instrument of that name; refused when there is none. */
    public VirtualInstrument instrument(String name) {
        return byPort.values().stream()
                .filter(instrument -> instrument.fixture().name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no virtual instrument '" + name + "'; there are "
                        + String.join(
                                ", ",
                                byPort.values().stream()
                                        .map(instrument -> instrument.fixture().name())
                                        .toList())));
    }

    /** The supply of that name, with what only supplies can tell. */
    public VirtualSupply supply(String name) {
        if (instrument(name) instanceof VirtualSupply supply) {
            return supply;
        }
        throw new IllegalArgumentException("'" + name + "' is no supply");
    }

    /** What a person does with the remote turn-on line where no supply drives it. */
    public void switchRemote(boolean on) {
        world.remote(clock.getAsLong(), on);
    }

    /** What a person does with a resistor bank: so many ohm across the rail, or 0 to take it off. */
    public void switchResistor(String rail, double ohm) {
        world.draw(clock.getAsLong(), rail, "resistor bank", ohm <= 0 ? Draw.NONE : Draw.ohms(ohm));
    }

    /** What a person does with the hand disconnect between source and unit. */
    public void openDisconnect() {
        world.disconnect(clock.getAsLong());
    }

    /** A transformer lies on the bench beside the unit. */
    public void coil(Coil wound, Coil.Drive generator, double ringFarads) {
        coil = wound;
        drive = generator;
        ring = ringFarads;
        thermal = 30e-6 * random("joints").nextGaussian();
    }

    /** The transformer on the bench; empty where none lies there. */
    public Optional<Coil> coil() {
        return Optional.ofNullable(coil);
    }

    /**
     * What a person does with the transformer: connects it so.
     *
     * @param node of the meter that is moved to it
     */
    public void connect(Hookup hookup, String node) {
        if (coil == null) {
            throw new IllegalStateException("no transformer lies on this virtual bench");
        }
        world.apart(clock.getAsLong(), new Connected(coil, hookup, node, drive, ring, thermal));
    }

    /** What a person does with it then: fits it into the unit, and the leads are at the unit again. */
    public void fitted() {
        world.apart(clock.getAsLong(), null);
    }

    /** What a person reads there with a meter that the bench sheet does not know: four digits. */
    public double readByHand(Channel channel) {
        double value = new Probe(world, channel, 0, LOWEST_HAND_HZ, HIGHEST_HAND_HZ).value(clock.getAsLong());
        return new BigDecimal(value).round(new MathContext(4)).doubleValue();
    }

    /** What a person does with the leads of a meter: clips them together, or puts them back where they were. */
    public void shortLeads(String meter, boolean together) {
        if (!(instrument(meter) instanceof VirtualMeter found)) {
            throw new IllegalArgumentException("'" + meter + "' is no meter");
        }
        found.shortLeads(together);
    }

    /** What a person reads off a meter without a wire, with the errors the sheet states, in the channel's unit. */
    public double readByHand(HandRead meter) {
        long now = clock.getAsLong();
        Stated stated = meter.accuracy()
                .map(accuracy -> BenchFixtures.stated(accuracy, world.degC(now, "ambient")))
                .orElse(Stated.EXACT);
        boolean band = meter.bandHz().size() == 2;
        double value = new Probe(
                        world,
                        meter.reads(),
                        0,
                        band ? meter.bandHz().get(0) : LOWEST_HAND_HZ,
                        band ? meter.bandHz().get(1) : HIGHEST_HAND_HZ)
                .value(now);
        Imperfection errors = handErrors.computeIfAbsent(
                meter.meter() + " " + meter.function() + " " + meter.range(),
                name -> new Imperfection(stated, random(name)));
        double shunt = meter.perUnit() * shuntShare(meter);
        double range = meter.range().orElse(Math.max(1, Math.abs(value * shunt)));
        double digit = meter.accuracy()
                .map(Accuracy::resolution)
                .filter(size -> size > 0)
                .orElse(range / HAND_DIGITS);
        return errors.shown(value * shunt, range, digit) / meter.perUnit();
    }

    /** The true resistance of a shunt over that of the sheet: anywhere in its tolerance. */
    private double shuntShare(HandRead meter) {
        double share = 2 * random("shunt of " + meter.name()).nextDouble() - 1;
        return 1 + share * meter.shuntTolerancePct() / 100;
    }

    /**
     * What a person does at a supply that has only knobs: turns them as near as the display shows.
     *
     * @return what the display then shows, V or A
     */
    public double turnKnob(KnobTurn turn) {
        VirtualSupply supply = knobs();
        double step = turn.kind().unit().equals("V") ? knobVolts : knobAmps;
        double beside = turn.value() + step * (hands.nextDouble() - 0.5);
        return switch (turn.kind()) {
            case SET_VOLTS -> shown(supply, "VOLT " + Math.max(0, beside), "VOLT?", step);
            case SET_LIMIT -> shown(supply, "CURR " + Math.max(step / 2, beside), "CURR?", step);
            case SWITCH_ON -> shown(supply, "OUTP ON", "MEAS:VOLT?", step);
            case LOOK_VOLTS -> shown(supply, "", "MEAS:VOLT?", step);
            case LOOK_AMPS -> shown(supply, "", "MEAS:CURR?", step);
        };
    }

    private static double shown(VirtualSupply supply, String done, String looked, double step) {
        if (!done.isEmpty()) {
            supply.hear(done);
        }
        String reply = new String(supply.hear(looked).reply().orElseThrow(), StandardCharsets.US_ASCII);
        return Math.rint(Double.parseDouble(reply.strip()) / step) * step;
    }

    /** What a person does when told to switch off a supply that has only knobs. */
    public void switchOffByHand() {
        knobs().hear("OUTP OFF");
    }

    private VirtualSupply knobs() {
        if (byPort.get(InstrumentSheet.BY_HAND) instanceof VirtualSupply supply) {
            return supply;
        }
        throw new IllegalStateException("this virtual bench has no supply with knobs");
    }

    private Random random(String name) {
        Random random = new Random(31 * seed + name.hashCode());
        random.nextLong();
        return random;
    }

    /** Opens lines to these instruments inside the process, on the virtual clock. */
    public LineOpener opener(VirtualScheduler scheduler) {
        return settings -> open(settings, scheduler);
    }

    private Line open(PortSettings settings, VirtualScheduler scheduler) {
        VirtualInstrument instrument = byPort.get(settings.port());
        if (instrument == null) {
            throw new LineException(
                    LineException.Trouble.NO_SUCH_PORT,
                    settings.port() + ": the virtual bench has no such port; it has "
                            + String.join(", ", byPort.keySet()),
                    "",
                    "");
        }
        return new PeerLine(settings.port(), instrument, scheduler);
    }
}
