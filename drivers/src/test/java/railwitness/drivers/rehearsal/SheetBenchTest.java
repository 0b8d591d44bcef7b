package railwitness.drivers.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.converter.Balance;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Waveform;
import railwitness.drivers.sheet.Sheet;
import railwitness.drivers.time.VirtualScheduler;

/** The drivers of this project against the virtual bench, in each dialect: both ends must mean the same. */
class SheetBenchTest {
    private static String sheet(String dialect) {
        return """
            [bench]
            name = "wharf"
            ambient_degC = 22
            source = "supply"
            lead_resistance_ohm = 0.02
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "s"
            dialect = "DIALECT"
            highest_V = 20
            highest_A = 40
            drives_remote = true
            accuracy.voltage = { reading_pct = 0.05, offset = 0.010 }
            [[instrument]]
            name = "input meter"
            kind = "meter"
            port = "i"
            dialect = "DIALECT"
            reads = "input.voltage"
            range = 100
            plc = 1
            accuracy.voltage = { reading_pct = 0.015, range_pct = 0.004 }
            [[instrument]]
            name = "shunt meter"
            kind = "meter"
            port = "c"
            dialect = "DIALECT"
            reads = "input.current"
            function = "voltage"
            range = 0.1
            shunt_ohm = 0.001
            shunt_tolerance_pct = 0.1
            [[instrument]]
            name = "plus meter"
            kind = "meter"
            port = "p"
            dialect = "DIALECT"
            reads = "plus.voltage"
            range = 100
            plc = 1
            [[instrument]]
            name = "plus ripple meter"
            kind = "meter"
            port = "r"
            dialect = "DIALECT"
            reads = "plus.ripple"
            range = 1
            band_Hz = [20, 300000]
            [[instrument]]
            name = "heat-sink meter"
            kind = "meter"
            port = "h"
            dialect = "DIALECT"
            reads = "heatsink.temperature"
            [[instrument]]
            name = "plus load"
            kind = "load"
            port = "l"
            dialect = "DIALECT"
            rail = "plus"
            reads = "plus.current"
            [[instrument]]
            name = "minus load"
            kind = "load"
            port = "m"
            dialect = "DIALECT"
            rail = "minus"
            reads = ["minus.current", "minus.voltage"]
            reversed = true
            [[instrument]]
            name = "scope"
            kind = "scope"
            port = "o"
            dialect = "DIALECT"
            reads = "minus.ripple"
            range = 0.5
            span_s = 0.0002
            """.replace("DIALECT", dialect);
    }

    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);

    private void pass(double seconds) {
        scheduler.spend(Duration.ofNanos(Math.round(seconds * 1e9)));
    }

    private static Map<String, Double> values(Bench bench) {
        return bench.workers().stream()
                .flatMap(worker -> worker.instrument().poll().readings().stream())
                .filter(Measured.class::isInstance)
                .map(Measured.class::cast)
                .collect(Collectors.toMap(measured -> measured.channel().toString(), Measured::value));
    }

    @ParameterizedTest
    @ValueSource(strings = {"scpi-1999", "remote-first", "channels"})
    void aWholeBenchIsSetUpPoweredLoadedAndRead(String dialect) {
        BenchSheet sheet = Sheet.of("bench.toml", sheet(dialect)).read(BenchSheet::from);
        VirtualBench virtual = VirtualBench.of(Specimen.usual(), List.of(), sheet, 3, scheduler::nowNanos);
        try (Bench bench = Bench.open(
                sheet, virtual.opener(scheduler), scheduler, WorkerMaker.inline(scheduler), exchange -> {})) {
            Supply supply = bench.supply().instrument();
            supply.setVolts(13.8);
            supply.setCurrentLimit(30);
            supply.setOverVoltageProtection(16);
            assertThat(supply.voltsSetting()).isEqualTo(13.8);
            assertThat(supply.currentLimitSetting()).isEqualTo(30);
            assertThat(supply.overVoltageProtectionSetting()).isEqualTo(16);
            assertThat(supply.isOn()).isFalse();
            supply.switchOn();
            assertThat(supply.isOn()).isTrue();
            pass(1);
            assertThat(values(bench).get("plus.voltage")).isCloseTo(0, within(0.1));
            supply.setRemote(true);
            pass(2);
            for (var worker : bench.loads().values()) {
                Load load = worker.instrument();
                load.setAmps(4);
                load.inputOn();
                assertThat(load.isOn()).isTrue();
            }
            pass(2);
            assertReadings(values(bench), virtual.world().now());
            PollResult pollResult = supply.poll();
            assertThat(pollResult.conditions()).isEmpty();
            Waveform waveform = bench.scopes().get(0).instrument().waveform();
            assertThat(waveform.values()).hasSize(2000);
            assertThat(waveform.stepSeconds()).isCloseTo(1e-7, within(1e-12));
            bench.loads().values().forEach(worker -> worker.instrument().setOhms(12));
            supply.setCurrentLimit(16);
            pass(1);
            assertThat(supply.poll().conditions()).contains(Condition.LIMITING);
            supply.switchOff();
            assertThat(supply.poll().conditions()).contains(Condition.OUTPUT_OFF);
            assertThat(virtual.supply("supply").isOn()).isFalse();
            supply.cutIn(supply.offBytes());
            for (var worker : bench.loads().values()) {
                worker.instrument().cutIn(worker.instrument().offBytes());
                assertThat(worker.instrument().isOn()).isFalse();
            }
        }
    }

    private static void assertReadings(Map<String, Double> read, Balance truth) {
        assertThat(read.get("input.voltage")).isCloseTo(truth.terminalVolts(), within(0.01));
        assertThat(read.get("input.current")).isCloseTo(truth.inputAmps(), within(0.03));
        assertThat(read.get("supply.voltage")).isCloseTo(13.8, within(0.04));
        assertThat(read.get("supply.current")).isCloseTo(truth.inputAmps(), within(0.01));
        assertThat(read.get("plus.voltage")).isCloseTo(truth.rail("plus").volts(), within(0.01));
        assertThat(read.get("minus.voltage")).isCloseTo(truth.rail("minus").volts(), within(0.01));
        assertThat(read.get("plus.current")).isCloseTo(4, within(0.01));
        assertThat(read.get("minus.current")).isCloseTo(4, within(0.01));
        assertThat(read.get("plus.ripple")).isBetween(0.025, 0.035);
        assertThat(read.get("heatsink.temperature")).isBetween(21.0, 25.0);
    }
}
