package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.drivers.instrument.Condition;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.instrument.Supply;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.LineException.Trouble;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.reading.Missing;
import railwitness.drivers.reading.Overload;

class BenchTest {
    private static final String SUPPLY = """
            [bench]
            name = "wharf"
            [[instrument]]
            name = "supply"
            kind = "supply"
            port = "S"
            highest_V = 20
            """;
    private static final String METER = """
            [[instrument]]
            name = "input shunt meter"
            kind = "meter"
            port = "M"
            reads = "input.current"
            function = "voltage"
            range = 0.1
            shunt_ohm = 0.001
            """;
    private static final String LOAD = """
            [[instrument]]
            name = "minus load"
            kind = "load"
            port = "L"
            rail = "minus"
            reads = ["minus.current", "minus.voltage"]
            reversed = true
            """;

    private final ScriptedPeer supply = new ScriptedPeer("Workshop,S-1,1,1.0")
            .answers("OUTP?", "1")
            .answers("MEAS:VOLT?", "+1.38E+01")
            .answers("MEAS:CURR?", "4.2")
            .answers("STAT:QUES:COND?", "0");
    private final ScriptedPeer meter = new ScriptedPeer("Workshop,M-1,2,1.0").answers("READ?", "+4.2E-3");
    private final TestBench bed = new TestBench().peer("S", supply).peer("M", meter);

    private Supply supply(Bench bench) {
        return bench.supply().instrument();
    }

    @Test
    void shuntMeterReportsAmps() {
        PollResult pollResult =
                bed.open(SUPPLY + METER).meters().get(0).instrument().poll();
        assertThat(((Measured) pollResult.readings().get(0)).value()).isCloseTo(4.2, within(1e-12));
        assertThat(pollResult.readings().get(0).channel()).isEqualTo(Channel.of("input.current"));
    }

    @Test
    void readingCarriesWhenItWasAskedAndAnswered() {
        Bench bench = bed.open(SUPPLY + METER);
        long asked = bed.scheduler.nowNanos();
        Measured reading =
                (Measured) bench.meters().get(0).instrument().poll().readings().get(0);
        assertThat(reading.requestedNanos()).isEqualTo(asked);
        assertThat(reading.repliedNanos()).isEqualTo(asked + 20_000_000L);
    }

    @Test
    void overloadIsNotANumber() {
        Bench bench = bed.open(SUPPLY + METER);
        meter.answers("READ?", "+9.90000000E+37");
        assertThat(bench.meters().get(0).instrument().poll().readings().get(0)).isInstanceOf(Overload.class);
    }

    @Test
    void notANumberAndNonsenseAreMissing() {
        Bench bench = bed.open(SUPPLY + METER);
        for (String reply : List.of("9.91E37", "4.2E-3E", "4.2E30", "")) {
            meter.answers("READ?", reply);
            assertThat(bench.meters().get(0).instrument().poll().readings().get(0))
                    .as(reply)
                    .isInstanceOf(Missing.class);
        }
    }

    @Test
    void silentSupplyCostsOneDeadlineAndSaysWhy() {
        Bench bench = bed.open(SUPPLY);
        supply.knowsNo("MEAS:");
        long before = bed.scheduler.nowNanos();
        PollResult pollResult = supply(bench).poll();
        assertThat(bed.scheduler.nowNanos() - before).isEqualTo(1_000_000_000L);
        assertThat(pollResult.readings())
                .allSatisfy(reading -> assertThat(((Missing) reading).reason()).isEqualTo("no answer in 1.0 s"));
    }

    @Test
    void limitingSupplyIsACondition() {
        Bench bench = bed.open(SUPPLY);
        supply.answers("STAT:QUES:COND?", "1");
        assertThat(supply(bench).poll().conditions()).isEqualTo(Set.of(Condition.LIMITING));
    }

    @Test
    void trippedProtectionIsToldWithTheOutputOff() {
        Bench bench = bed.open(SUPPLY);
        supply.answers("STAT:QUES:COND?", "512").answers("OUTP?", "0");
        assertThat(supply(bench).poll().conditions()).isEqualTo(Set.of(Condition.PROTECTION, Condition.OUTPUT_OFF));
    }

    @Test
    void settingBeyondTheBenchSheetIsNotSent() {
        Bench bench = bed.open(SUPPLY);
        assertThatThrownBy(() -> supply(bench).setVolts(20.5)).hasMessageContaining("0.0 to 20.0 by the bench sheet");
        assertThat(supply.heard()).doesNotContain("VOLT 20.5");
    }

    @Test
    void nanIsNotSent() {
        Bench bench = bed.open(SUPPLY);
        assertThatThrownBy(() -> supply(bench).setVolts(Double.NaN)).isInstanceOf(LineException.class);
    }

    @Test
    void reversedLoadGivesTheRailItsSign() {
        bed.peer(
                "L",
                new ScriptedPeer("Workshop,L-1,3,1.0")
                        .answers("INP?", "0")
                        .answers("MEAS:VOLT?", "36.5")
                        .answers("MEAS:CURR?", "2")
                        .answers("STAT:QUES:COND?", "2"));
        PollResult pollResult =
                bed.open(SUPPLY + LOAD).loads().get("minus").instrument().poll();
        assertThat(pollResult.readings())
                .extracting(reading -> reading.channel() + "=" + ((Measured) reading).value())
                .containsExactly("minus.current=2.0", "minus.voltage=-36.5");
        assertThat(pollResult.conditions()).containsExactly(Condition.NOT_HOLDING);
    }

    @Test
    void wrongInstrumentIsRefusedByTheTextTheSheetExpects() {
        assertThatThrownBy(() -> bed.open(SUPPLY + METER + "expect = \"M-34\"\n"))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(Trouble.WRONG_INSTRUMENT))
                .hasMessageStartingWith("input shunt meter on M: wrong instrument: it answers *IDN? with"
                        + " 'Workshop,M-1,2,1.0', but the bench sheet expects 'M-34'");
        assertThat(meter.heard()).doesNotContain("*RST");
    }

    @Test
    void supplyThatKnowsNoOutputIsTheWrongInstrument() {
        ScriptedPeer other = new ScriptedPeer("Workshop,M-2,9,1.0").knowsNo("OUTP");
        bed.peer("S", other);
        assertThatThrownBy(() -> bed.open(SUPPLY))
                .hasMessageStartingWith(
                        "supply on S: wrong instrument: it is 'Workshop M-2, serial 9, firmware 1.0' and"
                                + " does not understand 'OUTP?'");
    }

    @Test
    void meterThatRefusesItsFunctionIsTheWrongInstrument() {
        meter.knowsNo("CONF");
        LineException e = catchThrowableOfType(LineException.class, () -> bed.open(SUPPLY + METER));
        assertThat(e.trouble()).isEqualTo(Trouble.WRONG_INSTRUMENT);
        assertThat(e).hasMessageContaining("does not understand 'CONF:VOLT:DC 0.1'");
        assertThat(e.getMessage().lines()).hasSize(1);
    }

    @Test
    void failedOpeningClosesAllThatWereOpened() {
        bed.peers.remove("M");
        assertThatThrownBy(() -> bed.open(SUPPLY + METER)).hasMessage("input shunt meter on M: no such port");
        assertThat(bed.opened).hasSize(1);
        assertThat(bed.open).isZero();
    }

    @Test
    void dialectIsChosenByTheIdentityAndItsTerminatorTaken() {
        bed.peer(
                "S",
                new ScriptedPeer("Workshop,S-1-RF,1,1.0")
                        .answers("OUTP:STAT?", "0")
                        .answers("MEAS:VOLT:DC?", "0")
                        .answers("MEAS:CURR:DC?", "0"));
        try (Bench bench = bed.open(SUPPLY)) {
            assertThat(bench.supply().instrument().identity().model()).isEqualTo("S-1-RF");
            assertThat(bed.opened).extracting(port -> port.terminator()).containsExactly("\n", "\r\n");
            assertThat(bed.open).isEqualTo(1);
            assertThat(new String(supply(bench).offBytes())).isEqualTo("\r\nSYST:REM\r\nOUTP:STAT OFF\r\n");
        }
        assertThat(bed.open).isZero();
    }

    @Test
    void everyExchangeIsLogged() {
        Bench bench = bed.open(SUPPLY);
        int opening = bed.log.size();
        supply(bench).poll();
        assertThat(bed.log).element(0).satisfies(first -> {
            assertThat(first.sent()).isEqualTo("*IDN?");
            assertThat(first.received()).isEqualTo("Workshop,S-1,1,1.0");
        });
        assertThat(bed.log.subList(opening, bed.log.size())).hasSize(4).allMatch(exchange -> exchange.polling());
    }

    @Test
    void refusedSettingNamesWhatTheInstrumentSaid() {
        supply.answers("VOLT:PROT?", "22");
        Bench bench = bed.open(SUPPLY);
        supply.knowsNo("VOLT:PROT");
        assertThatThrownBy(() -> supply(bench).setOverVoltageProtection(16))
                .hasMessageStartingWith("supply on S: 'VOLT:PROT 16' was refused: -113 Undefined header");
    }
}
