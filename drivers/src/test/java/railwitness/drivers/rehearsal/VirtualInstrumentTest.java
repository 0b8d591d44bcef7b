package railwitness.drivers.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.line.LineException;
import railwitness.drivers.reading.Channel;

/** Behaviour of the far side: IEEE 488.2 and SCPI-1999 as instrument makers' manuals describe them. */
class VirtualInstrumentTest {
    private final BenchOfTest bench = new BenchOfTest(Specimen.usual());

    @Test
    void identityHasFourFields() {
        assertThat(bench.ask("supply", "*IDN?").split(",")).hasSize(4);
    }

    @Test
    void longAndShortFormsInEitherCaseMeanTheSame() {
        bench.send("supply", "SOURce:VOLTage:LEVel:IMMediate:AMPLitude 12.5");
        assertThat(bench.ask("supply", "volt?")).isEqualTo("12.5");
        bench.send("supply", "volt:lev 11");
        assertThat(bench.ask("supply", ":SOUR:VOLTAGE?")).isEqualTo("11");
    }

    @Test
    void nothingBetweenShortAndLongFormIsTaken() {
        bench.send("supply", "VOLTA 5");
        assertThat(bench.ask("supply", "SYST:ERR?")).isEqualTo("-113,\"Undefined header;VOLTA\"");
    }

    @Test
    void headersAfterASemicolonAreRelativeUnlessAColonLeadsThem() {
        bench.send("supply", "SOUR:VOLT 9;CURR 3");
        assertThat(bench.ask("supply", "VOLT?;CURR?")).isEqualTo("9;3");
        bench.send("supply", "VOLT:PROT 15;VOLT 3");
        assertThat(bench.ask("supply", "SYST:ERR?")).startsWith("-113");
        bench.send("supply", "VOLT:PROT 15;:VOLT 3");
        assertThat(bench.ask("supply", "VOLT?")).isEqualTo("3");
    }

    @Test
    void aValueBeyondTheRatingIsRefusedAndTheOldOneStays() {
        bench.send("supply", "VOLT 12");
        bench.send("supply", "VOLT 99");
        assertThat(bench.ask("supply", "SYST:ERR?")).isEqualTo("-222,\"Data out of range;99\"");
        assertThat(bench.ask("supply", "SYST:ERR?")).isEqualTo("0,\"No error\"");
        assertThat(bench.ask("supply", "VOLT?")).isEqualTo("12");
    }

    @Test
    void aFullErrorQueueEndsInOverflow() {
        for (int k = 0; k < 30; k++) {
            bench.send("plus-load", "NONSENSE");
        }
        String last = "";
        for (int k = 0; k < 20; k++) {
            last = bench.ask("plus-load", "SYST:ERR?");
        }
        assertThat(last).isEqualTo("-350,\"Queue overflow\"");
        assertThat(bench.ask("plus-load", "SYST:ERR?")).startsWith("0,");
    }

    @Test
    void commandAndExecutionErrorsShowInTheEventRegister() {
        bench.ask("supply", "*ESR?");
        bench.send("supply", "NONSENSE");
        bench.send("supply", "VOLT 99");
        assertThat(bench.ask("supply", "*ESR?")).isEqualTo("48");
        assertThat(bench.ask("supply", "*ESR?")).isEqualTo("0");
    }

    @Test
    void aBadQueryIsNotAnsweredAtAll() {
        assertThatThrownBy(() -> bench.ask("plus-meter", "MEAS:BANANA?"))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(LineException.Trouble.NO_ANSWER));
    }

    @Test
    void aRemoteFirstInstrumentObeysOnlyAfterItWasTold() {
        BenchOfTest remoteFirst = new BenchOfTest(Specimen.usual(), 1, "remote-first");
        remoteFirst.send("supply", "VOLT:LEV 12");
        assertThat(remoteFirst.ask("supply", "SYST:ERR?")).startsWith("-221");
        remoteFirst.send("supply", "SYST:REM");
        remoteFirst.send("supply", "VOLT:LEV 12");
        assertThat(remoteFirst.ask("supply", "VOLT:LEV?")).isEqualTo("12");
        assertThat(remoteFirst.ask("supply", "*IDN?")).contains("-RF,");
    }

    @Test
    void channelListsReachTheSecondOutput() {
        bench.send("supply", "VOLT 12,(@2);VOLT 5,(@1)");
        assertThat(bench.ask("supply", "VOLT? (@2)")).isEqualTo("12");
        assertThat(bench.ask("supply", "VOLT? (@1)")).isEqualTo("5");
        assertThat(new BenchOfTest(Specimen.usual(), 1, "channels").ask("supply", "*IDN?"))
                .contains("-CH,");
    }

    @Test
    void theUnitRunsOnlyWithItsRemoteTurnOn() {
        bench.send("supply", "VOLT 13.8;CURR 30;OUTP ON");
        bench.passSeconds(2);
        assertThat(bench.number("plus-meter", "READ?")).isCloseTo(0, within(0.1));
        bench.send("supply", "OUTP:REL ON");
        bench.passSeconds(2);
        assertThat(bench.number("plus-meter", "READ?")).isBetween(40.0, 43.0);
        assertThat(bench.number("minus-meter", "READ?")).isBetween(-43.0, -40.0);
    }

    @Test
    void aReadingBeyondTheRangeIsAnOverload() {
        bench.powered();
        bench.send("plus-meter", "CONF:VOLT:DC 10");
        assertThat(bench.ask("plus-meter", "READ?")).isEqualTo("+9.90000000E+37");
        bench.send("plus-meter", "VOLT:DC:RANG 100");
        assertThat(bench.number("plus-meter", "READ?")).isBetween(40.0, 43.0);
    }

    @Test
    void theShuntMeterReadsTheDropOfTheInputCurrent() {
        bench.powered().loaded(4);
        bench.send("shunt-meter", "CONF:VOLT:DC 0.1;:VOLT:DC:NPLC 1");
        double amps = bench.number("shunt-meter", "READ?") / 0.001;
        assertThat(amps).isBetween(22.0, 26.0);
        assertThat(bench.number("supply", "MEAS:CURR?")).isCloseTo(amps, within(0.1));
    }

    @Test
    void theRippleMeterReadsWithinItsBand() {
        bench.powered().loaded(4);
        bench.send("ripple-meter", "CONF:VOLT:AC 1");
        double wide = bench.number("ripple-meter", "READ?");
        double unlimited = bench.bench
                .world()
                .at(bench.scheduler.nowNanos())
                .rail("plus")
                .ripple()
                .rmsVolts();
        assertThat(wide).isBetween(0.8 * unlimited, 1.1 * unlimited);
    }

    @Test
    void readingTakesTheTimeOfIntegrationAndOfTheWire() {
        bench.powered();
        bench.send("plus-meter", "CONF:VOLT:DC 100;:VOLT:DC:NPLC 10");
        long before = bench.scheduler.nowNanos();
        bench.ask("plus-meter", "READ?");
        assertThat(Duration.ofNanos(bench.scheduler.nowNanos() - before).toMillis())
                .isBetween(200L, 210L);
        before = bench.scheduler.nowNanos();
        bench.ask("plus-meter", "FETC?");
        assertThat(Duration.ofNanos(bench.scheduler.nowNanos() - before).toMillis())
                .isLessThan(10);
    }

    @Test
    void theSupplySaysThatItLimits() {
        bench.powered();
        assertThat(bench.ask("supply", "STAT:QUES:COND?;:OUTP:MODE?")).isEqualTo("0;CV");
        bench.send("supply", "CURR 12");
        bench.send("plus-load", "FUNC RES;RES 17;INP ON");
        bench.send("minus-load", "FUNC RES;RES 17;INP ON");
        bench.passSeconds(1);
        assertThat(bench.ask("supply", "STAT:QUES:COND?;:OUTP:MODE?")).isEqualTo("1;CC");
        assertThat(bench.number("supply", "MEAS:CURR?")).isCloseTo(12, within(0.1));
    }

    @Test
    void overVoltageProtectionTripsAndHolds() {
        bench.powered();
        bench.send("supply", "VOLT 17");
        bench.passSeconds(0.2);
        assertThat(bench.ask("supply", "OUTP?")).isEqualTo("0");
        assertThat(bench.ask("supply", "STAT:QUES:COND?")).isEqualTo("512");
        bench.send("supply", "OUTP ON");
        assertThat(bench.ask("supply", "SYST:ERR?")).startsWith("-221");
        bench.send("supply", "VOLT 13;:OUTP:PROT:CLE;:OUTP ON");
        assertThat(bench.ask("supply", "OUTP?")).isEqualTo("1");
    }

    @Test
    void overCurrentProtectionTripsOnALastingCurrent() {
        bench.powered();
        bench.send("supply", "CURR:PROT 10");
        bench.loaded(3);
        assertThat(bench.ask("supply", "OUTP?;:OUTP:MODE?")).isEqualTo("0;OC");
    }

    @Test
    void aLoadOnADeadRailCannotHoldItsCurrent() {
        bench.send("plus-load", "CURR 2;INP ON");
        assertThat(bench.ask("plus-load", "STAT:QUES:COND?")).isEqualTo("2");
        assertThat(bench.ask("plus-load", "INP:MODE?")).isEqualTo("UNREG");
        bench.powered();
        assertThat(bench.ask("plus-load", "STAT:QUES:COND?;:INP:MODE?")).isEqualTo("0;CC");
    }

    @Test
    void aLoadAtConstantResistanceDrawsByOhmsLaw() {
        bench.powered();
        bench.send("plus-load", "FUNC RES;RES 20;INP ON");
        bench.passSeconds(1);
        double volts = bench.number("plus-load", "MEAS:VOLT?");
        assertThat(bench.number("plus-load", "MEAS:CURR?")).isCloseTo(volts / 20, within(0.01));
    }

    @Test
    void railsStayChargedAfterSwitchingOffWithoutALoad() {
        bench.powered();
        bench.send("supply", "OUTP OFF");
        bench.passSeconds(2);
        assertThat(bench.number("plus-meter", "READ?")).isGreaterThan(30);
    }

    @Test
    void theScopeHandsOverASweepAsABlock() {
        bench.powered().loaded(4);
        bench.send("scope", "INP1:COUP AC;:VOLT:RANG 0.5,(@1);:SWE:TIME 0.0001;:FORM INT,16");
        assertThat(bench.ask("scope", "INIT;*OPC?")).isEqualTo("1");
        String[] preamble = bench.ask("scope", "TRAC:PRE? CH1").split(",");
        byte[] bytes = bench.askBlock("scope", "TRAC? CH1");
        assertThat(bytes).hasSize(2 * Integer.parseInt(preamble[0]));
        assertThat(peakToPeak(bytes) * Double.parseDouble(preamble[3])).isBetween(0.09, 0.16);
    }

    private static double peakToPeak(byte[] bytes) {
        ByteBuffer codes = ByteBuffer.wrap(bytes);
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        while (codes.hasRemaining()) {
            short code = codes.getShort();
            low = Math.min(low, code);
            high = Math.max(high, code);
        }
        return high - low;
    }

    @Test
    void theSensorReadsTheHeatSink() {
        bench.send("heatsink-meter", "CONF:TEMP");
        assertThat(bench.number("heatsink-meter", "READ?")).isCloseTo(22, within(1.0));
    }

    @Test
    void aMeterWithoutASensorHasNoTemperature() {
        bench.send("plus-meter", "CONF:TEMP");
        assertThat(bench.ask("plus-meter", "READ?")).isEqualTo("9.91E37");
    }

    @Test
    void resettingTheSupplySwitchesItOff() {
        bench.powered();
        bench.send("supply", "*RST");
        assertThat(bench.ask("supply", "OUTP?;VOLT?")).isEqualTo("0;0");
        assertThat(bench.bench.supply("supply").isOn()).isFalse();
    }

    @Test
    void aPersonReadsAMeterWithoutAWireToItsDigits() {
        bench.powered();
        HandRead meter =
                new HandRead("old meter", Channel.of("minus.voltage"), OptionalDouble.of(100), Optional.empty());
        double truth =
                bench.bench.world().at(bench.scheduler.nowNanos()).rail("minus").volts();
        assertThat(bench.bench.readByHand(meter)).isCloseTo(truth, within(0.0126));
    }

    @Test
    void anUnknownPortIsNamedWithThoseThereAre() {
        assertThatThrownBy(() -> bench.line("nowhere"))
                .hasMessageContaining("nowhere")
                .hasMessageContaining("plus-meter");
    }

    @Test
    void meterWithItsLeadsShortedShowsNoughtWhileTheUnitIsUp() {
        bench.send("supply", "VOLT 13.8;CURR 30;:OUTP ON");
        assertThat(Double.parseDouble(bench.ask("input-meter", "READ?"))).isGreaterThan(10);
        bench.bench.shortLeads("input-meter", true);
        assertThat(Double.parseDouble(bench.ask("input-meter", "READ?"))).isBetween(-0.001, 0.001);
        bench.bench.shortLeads("input-meter", false);
        assertThat(Double.parseDouble(bench.ask("input-meter", "READ?"))).isGreaterThan(10);
        assertThatThrownBy(() -> bench.bench.shortLeads("supply", true)).hasMessageContaining("is no meter");
    }
}
