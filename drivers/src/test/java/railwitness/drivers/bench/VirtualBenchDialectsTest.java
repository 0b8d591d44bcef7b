package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.converter.World;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Reading;
import railwitness.drivers.rehearsal.Fixture;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;

/** Both ends of each dialect talk to each other: the bench as it is opened for a run, and the virtual instruments. */
class VirtualBenchDialectsTest {
    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);

    private Bench open(String dialect) {
        List<Fixture> fixtures = List.of(
                Fixture.supply("supply").withRemote().withHighest(20, 40),
                Fixture.meter("input", "input.voltage"),
                Fixture.meter("shunt", "input.current").withShunt(0.001, 0.001),
                Fixture.meter("plus", "plus.voltage"),
                Fixture.meter("ripple", "plus.ripple"),
                Fixture.meter("warmth", "heatsink.temperature"),
                Fixture.load("load", "plus"));
        List<Fixture> speaking = fixtures.stream()
                .map(fixture -> fixture.withPort(fixture.name(), dialect, 115_200, 50))
                .toList();
        VirtualBench virtual = new VirtualBench(new World(Specimen.usual(), 22), speaking, 1, scheduler::nowNanos);
        return Bench.open(
                Sheet.of("bench.toml", SHEET).read(BenchSheet::from),
                virtual.opener(scheduler),
                scheduler,
                WorkerMaker.inline(scheduler),
                ExchangeLog.none());
    }

    private static final String SHEET = "[bench]\nname = \"virtual\"\n"
            + instrument("supply", "supply", "drives_remote = true\nhighest_V = 20\nhighest_A = 40")
            + instrument("input", "meter", "reads = \"input.voltage\"\nrange = 100\nplc = 1")
            + instrument(
                    "shunt",
                    "meter",
                    "reads = \"input.current\"\nfunction = \"voltage\"\nshunt_ohm = 0.001\nrange = 0.1\nplc = 1\n"
                            + "standby_range = 0.01")
            + instrument("plus", "meter", "reads = \"plus.voltage\"\nrange = 100\nplc = 1")
            + instrument("ripple", "meter", "reads = \"plus.ripple\"\nrange = 1")
            + instrument("warmth", "meter", "reads = \"heatsink.temperature\"")
            + instrument("load", "load", "rail = \"plus\"\nreads = [\"plus.current\"]");

    private static String instrument(String name, String kind, String more) {
        return "[[instrument]]\nname = \"" + name + "\"\nkind = \"" + kind + "\"\nport = \"" + name + "\"\n" + more
                + "\n";
    }

    private void pass(int seconds) {
        scheduler.spend(Duration.ofSeconds(seconds));
    }

    private Map<String, Double> readings(Bench bench) {
        Map<String, Double> values = new TreeMap<>();
        bench.workers().forEach(worker -> {
            PollResult pollResult = worker.instrument().poll();
            for (Reading reading : pollResult.readings()) {
                assertThat(reading).isInstanceOf(Measured.class);
                values.put(reading.channel().toString(), ((Measured) reading).value());
            }
        });
        return values;
    }

    @ParameterizedTest
    @ValueSource(strings = {"scpi-1999", "remote-first", "channels"})
    void unitIsPoweredLoadedReadAndSwitchedOff(String dialect) {
        try (Bench bench = open(dialect)) {
            Supply supply = bench.supply().instrument();
            Load load = bench.loads().get("plus").instrument();
            supply.setVolts(13.8);
            supply.setCurrentLimit(30);
            supply.setOverVoltageProtection(16);
            assertThat(supply.voltsSetting()).isCloseTo(13.8, within(0.01));
            assertThat(supply.overVoltageProtectionSetting()).isCloseTo(16, within(0.1));
            assertThat(supply.isOn()).isFalse();
            supply.switchOn();
            supply.setRemote(true);
            assertThat(supply.isOn()).isTrue();
            pass(3);
            load.setAmps(2);
            load.inputOn();
            pass(2);
            Map<String, Double> loaded = readings(bench);
            assertThat(loaded.get("plus.current")).isCloseTo(2, within(0.05));
            assertThat(loaded.get("plus.voltage")).isBetween(20.0, 60.0);
            assertThat(loaded.get("input.current")).isBetween(3.0, 20.0);
            assertThat(loaded.get("supply.voltage")).isCloseTo(13.8, within(0.1));
            supply.cutIn(supply.offBytes());
            assertThat(supply.isOn()).isFalse();
            assertThat(supply.poll().conditions()).contains(Condition.OUTPUT_OFF);
            load.cutIn(load.offBytes());
            assertThat(load.isOn()).isFalse();
        }
    }

    /* A unit that starves lets go of its load and starts anew, so the supply limits now and then. */
    private static boolean limitsWithinTwoSeconds(Supply supply) {
        return IntStream.range(0, 20)
                .anyMatch(round -> supply.poll().conditions().contains(Condition.LIMITING));
    }

    @ParameterizedTest
    @ValueSource(strings = {"scpi-1999", "remote-first", "channels"})
    void limitingSupplyIsSeen(String dialect) {
        try (Bench bench = open(dialect)) {
            Supply supply = bench.supply().instrument();
            supply.setVolts(13.8);
            supply.setCurrentLimit(1);
            supply.switchOn();
            supply.setRemote(true);
            pass(1);
            Load load = bench.loads().get("plus").instrument();
            load.setAmps(2);
            load.inputOn();
            assertThat(limitsWithinTwoSeconds(supply)).isTrue();
            supply.switchOff();
        }
    }
}
