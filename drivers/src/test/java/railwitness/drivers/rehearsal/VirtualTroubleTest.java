package railwitness.drivers.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import railwitness.drivers.converter.Specimen;
import railwitness.drivers.line.LineException;

class VirtualTroubleTest {
    private final BenchOfTest bench = new BenchOfTest(Specimen.usual()).powered();
    private final VirtualSupply supply = bench.bench.supply("supply");
    private final VirtualInstrument meter = bench.bench.instrument("plus-meter");

    private void askFails(LineException.Trouble trouble) {
        assertThatThrownBy(() -> bench.ask("plus-meter", "READ?"))
                .isInstanceOfSatisfying(
                        LineException.class, e -> assertThat(e.trouble()).isEqualTo(trouble));
    }

    @Test
    void aSilentInstrumentAnswersNothing() {
        meter.trouble(Trouble.SILENT);
        askFails(LineException.Trouble.NO_ANSWER);
    }

    @Test
    void aSilentSupplyDoesNotObeyEither() {
        supply.trouble(Trouble.SILENT);
        bench.send("supply", "OUTP OFF");
        assertThat(supply.isOn()).isTrue();
    }

    @Test
    void aLateAnswerMissesTheDeadline() {
        meter.trouble(Trouble.LATE);
        askFails(LineException.Trouble.NO_ANSWER);
    }

    @Test
    void aVanishedPortIsUnplugged() {
        meter.trouble(Trouble.VANISHED);
        askFails(LineException.Trouble.UNPLUGGED);
    }

    @Test
    void aGarbledAnswerIsNoNumber() {
        meter.trouble(Trouble.GARBLED);
        String reply = bench.ask("plus-meter", "READ?");
        assertThat(reply).doesNotMatch("[+-]?[0-9.]+(E[+-]?[0-9]+)?");
    }

    @Test
    void answersBeforeGivesTheAnswerToTheQuestionBefore() {
        String identity = bench.ask("plus-meter", "*IDN?");
        meter.trouble(Trouble.ANSWERS_BEFORE);
        assertThat(bench.ask("plus-meter", "*OPC?")).isEqualTo(identity);
        assertThat(bench.ask("plus-meter", "*IDN?")).isEqualTo("1");
    }

    @Test
    void anOverloadedMeterSaysSo() {
        meter.trouble(Trouble.OVERLOADED);
        assertThat(bench.ask("plus-meter", "READ?")).isEqualTo("+9.90000000E+37");
    }

    @Test
    void aRefusingSupplyKeepsItsStateAndSaysWhy() {
        supply.trouble(Trouble.REFUSES);
        bench.send("supply", "OUTP OFF");
        assertThat(bench.ask("supply", "SYST:ERR?")).startsWith("-221");
        assertThat(supply.isOn()).isTrue();
    }

    @Test
    void ignoringOffOnceObeysTheSecondTime() {
        supply.trouble(Trouble.IGNORES_OFF_ONCE);
        bench.send("supply", "OUTP OFF");
        assertThat(bench.ask("supply", "OUTP?")).isEqualTo("1");
        bench.send("supply", "OUTP OFF");
        assertThat(bench.ask("supply", "OUTP?")).isEqualTo("0");
    }

    @Test
    void ignoringOffAlwaysNeverObeys() {
        supply.trouble(Trouble.IGNORES_OFF);
        bench.send("supply", "OUTP OFF");
        bench.send("supply", "OUTP OFF");
        assertThat(supply.isOn()).isTrue();
    }

    @Test
    void sayingOffWhileOnIsALie() {
        supply.trouble(Trouble.SAYS_OFF);
        assertThat(bench.ask("supply", "OUTP?;:OUTP:MODE?")).isEqualTo("0;OFF");
        assertThat(supply.isOn()).isTrue();
    }

    @Test
    void troubleBeginsAtItsTime() {
        meter.trouble(Trouble.OVERLOADED, bench.scheduler.nowNanos() + 5_000_000_000L);
        assertThat(bench.ask("plus-meter", "READ?")).doesNotContain("E+37");
        bench.passSeconds(5);
        assertThat(bench.ask("plus-meter", "READ?")).contains("E+37");
    }

    @Test
    void troubleBeginsAtItsExchange() {
        meter.troubleAtExchange(Trouble.OVERLOADED, meter.exchanges() + 2);
        assertThat(bench.ask("plus-meter", "READ?")).doesNotContain("E+37");
        assertThat(bench.ask("plus-meter", "READ?")).contains("E+37");
    }

    @Test
    void curedItIsInOrderAgain() {
        meter.trouble(Trouble.VANISHED);
        askFails(LineException.Trouble.UNPLUGGED);
        meter.cure();
        assertThat(bench.number("plus-meter", "READ?")).isBetween(40.0, 43.0);
    }

    @Test
    void aMeterWithReversedLeadsHasTheOtherSign() {
        double before = Double.parseDouble(bench.ask("plus-meter", "READ?"));
        meter.trouble(Trouble.REVERSED_LEADS);
        assertThat(Double.parseDouble(bench.ask("plus-meter", "READ?")))
                .isNegative()
                .isLessThan(-0.9 * before);
    }

    @Test
    void aFrozenMeterGoesOnAnswering() {
        String before = bench.ask("plus-meter", "READ?");
        meter.trouble(Trouble.FROZEN);
        bench.send("supply", "OUTP OFF");
        assertThat(bench.ask("plus-meter", "READ?")).isEqualTo(before);
    }

    @Test
    void aSupplyThatResetsIsOffAndObeysAgain() {
        supply.trouble(Trouble.RESETS);
        assertThat(bench.ask("supply", "OUTP?")).isEqualTo("0");
        assertThat(Double.parseDouble(bench.ask("supply", "VOLT?"))).isZero();
        bench.send("supply", "VOLT 5;:OUTP ON");
        assertThat(supply.isOn()).isTrue();
    }
}
