package railwitness.drivers.rehearsal;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalInt;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.PortSettings;
import railwitness.drivers.reading.Quantity;
import railwitness.drivers.scpi.Numeric;
import railwitness.drivers.time.VirtualScheduler;

/** A small virtual bench on the virtual clock, for tests. */
final class BenchOfTest {
    static final Stated METER = Stated.limit(0.015, 0.004, 0);
    private static final Duration PATIENCE = Duration.ofSeconds(1);

    final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
    final VirtualBench bench;

    BenchOfTest(Specimen specimen, long seed, String dialect) {
        bench = new VirtualBench(new World(specimen, 22), fixtures(dialect), seed, scheduler::nowNanos);
    }

    BenchOfTest(Specimen specimen) {
        this(specimen, 1, "scpi-1999");
    }

    static List<Fixture> fixtures(String dialect) {
        return List.of(
                inDialect(
                        Fixture.supply("supply").withRatings(new Fixture.Ratings(20, 40, 1, OptionalInt.of(2))),
                        dialect),
                inDialect(Fixture.meter("input-meter", "input.voltage").withAccuracy(Quantity.VOLTAGE, METER), dialect),
                inDialect(
                        Fixture.meter("shunt-meter", "input.current")
                                .withShunt(0.001, 0.001)
                                .withAccuracy(Quantity.VOLTAGE, METER),
                        dialect),
                inDialect(Fixture.meter("plus-meter", "plus.voltage").withAccuracy(Quantity.VOLTAGE, METER), dialect),
                inDialect(Fixture.meter("minus-meter", "minus.voltage").withAccuracy(Quantity.VOLTAGE, METER), dialect),
                inDialect(
                        Fixture.meter("ripple-meter", "plus.ripple")
                                .withAccuracy(Quantity.RIPPLE, Stated.limit(1, 0.1, 0)),
                        dialect),
                inDialect(
                        Fixture.meter("heatsink-meter", "heatsink.temperature")
                                .withAccuracy(Quantity.TEMPERATURE, Stated.limit(0, 0, 1)),
                        dialect),
                inDialect(Fixture.load("plus-load", "plus"), dialect),
                inDialect(Fixture.load("minus-load", "minus"), dialect),
                inDialect(Fixture.scope("scope", "plus.ripple"), dialect));
    }

    private static Fixture inDialect(Fixture fixture, String dialect) {
        return fixture.withTalk(new Fixture.Talk(fixture.name(), dialect, "\n", 115_200));
    }

    Line line(String port) {
        return bench.opener(scheduler).open(PortSettings.usual(port));
    }

    String ask(String port, String message) {
        return line(port).ask(message, PATIENCE);
    }

    byte[] askBlock(String port, String message) {
        return line(port).askBlock(message, PATIENCE);
    }

    double number(String port, String message) {
        return ((Numeric.Value) Numeric.of(ask(port, message))).value();
    }

    void send(String port, String message) {
        line(port).send(message);
    }

    void passSeconds(double seconds) {
        scheduler.spend(Duration.ofNanos(Math.round(seconds * 1e9)));
    }

    /** Supply and remote turn-on on, soft start over. */
    BenchOfTest powered() {
        send("supply", "VOLT 13.8;CURR 30;VOLT:PROT 16");
        send("supply", "INST:NSEL 2;:VOLT 12;:CURR 0.5;:OUTP ON;:INST:NSEL 1");
        send("supply", "OUTP ON");
        passSeconds(3);
        return this;
    }

    BenchOfTest loaded(double amps) {
        for (String load : new String[] {"plus-load", "minus-load"}) {
            send(load, "FUNC CURR;CURR " + amps + ";INP ON");
        }
        passSeconds(1);
        return this;
    }
}
