package railwitness.drivers.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import railwitness.drivers.instrument.Load;
import railwitness.drivers.instrument.Supply;

/**
 * What is sent, message by message, in set-up, polling and every command, kept as golden files. To write them anew after a wanted
 * change, run with -Dgolden.write=FOLDER and compare.
 */
class DialectGoldenTest {
    private final Locale before = Locale.getDefault();

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(before);
    }

    private static String sheet(String dialect) {
        return """
                [bench]
                name = "golden"
                [[instrument]]
                name = "supply"
                kind = "supply"
                port = "S"
                dialect = "DIALECT"
                drives_remote = true
                [[instrument]]
                name = "volts"
                kind = "meter"
                port = "V"
                dialect = "DIALECT"
                reads = "plus.voltage"
                range = 100
                plc = 1
                [[instrument]]
                name = "ripple"
                kind = "meter"
                port = "R"
                dialect = "DIALECT"
                reads = "plus.ripple"
                [[instrument]]
                name = "shunt"
                kind = "meter"
                port = "A"
                dialect = "DIALECT"
                reads = "input.current"
                function = "voltage"
                range = 0.1
                standby_range = 0.01
                plc = 10
                shunt_ohm = 0.001
                [[instrument]]
                name = "amps"
                kind = "meter"
                port = "C"
                dialect = "DIALECT"
                reads = "fan.current"
                [[instrument]]
                name = "warmth"
                kind = "meter"
                port = "T"
                dialect = "DIALECT"
                reads = "heatsink.temperature"
                [[instrument]]
                name = "load"
                kind = "load"
                port = "L"
                dialect = "DIALECT"
                rail = "plus"
                """.replace("DIALECT", dialect);
    }

    private static ScriptedPeer peer(String dialect) {
        ScriptedPeer peer = new ScriptedPeer("Workshop,M-1,7,1.0");
        for (String question : new String[] {
            "READ?",
            "FETC?",
            "OUTP?",
            "OUTP:STAT?",
            "OUTP? (@1)",
            "INP?",
            "INP:STAT?",
            "VOLT?",
            "CURR?",
            "VOLT:LEV?",
            "CURR:LEV?",
            "VOLT? (@1)",
            "CURR? (@1)",
            "VOLT:PROT?",
            "VOLT:LIM?",
            "VOLT:PROT? (@1)",
            "CURR:PROT?",
            "CURR:LIM?",
            "CURR:PROT? (@1)",
            "RES?",
            "RES:LEV?",
            "MEAS:VOLT?",
            "MEAS:CURR?",
            "MEAS:VOLT:DC?",
            "MEAS:CURR:DC?",
            "MEAS:VOLT? (@1)",
            "MEAS:CURR? (@1)",
            "STAT:QUES:COND?",
            "STAT:QUES:INST:ISUM1:COND?"
        }) {
            peer.answers(question, "1");
        }
        return peer.answers("OUTP:MODE?", "CV").answers("INP:MODE?", "CC");
    }

    private static String transcript(String dialect) {
        TestBench bed = new TestBench();
        for (String port : "S V R A C T L".split(" ")) {
            bed.peer(port, peer(dialect));
        }
        try (Bench bench = bed.open(sheet(dialect))) {
            bench.meters().get(2).instrument().rangeFor(5);
            bench.meters().get(2).instrument().rangeFor(50);
            command(bench.supply().instrument());
            command(bench.loads().get("plus").instrument());
            bench.workers().forEach(worker -> worker.instrument().poll());
        }
        StringBuilder text = new StringBuilder();
        bed.peers.forEach((port, peer) -> {
            text.append("== ").append(port).append('\n');
            peer.heard().forEach(message -> text.append(message).append('\n'));
        });
        return text.toString();
    }

    private static void command(Supply supply) {
        supply.setVolts(13.8);
        supply.voltsSetting();
        supply.setCurrentLimit(0.25);
        supply.currentLimitSetting();
        supply.setOverVoltageProtection(16.5);
        supply.overVoltageProtectionSetting();
        supply.setOverCurrentProtection(31);
        supply.overCurrentProtectionSetting();
        supply.setRemote(true);
        supply.switchOn();
        supply.isOn();
        supply.setRemote(false);
        supply.switchOff();
        supply.cutIn(supply.offBytes());
        supply.cutIn(supply.askOnBytes());
    }

    private static void command(Load load) {
        load.setAmps(0.0001);
        load.setting();
        load.inputOn();
        load.isOn();
        load.setOhms(12.5);
        load.setting();
        load.inputOff();
        load.cutIn(load.offBytes());
    }

    @ParameterizedTest
    @CsvSource({"scpi-1999, en", "scpi-1999, de", "scpi-1999, ar-EG", "remote-first, de", "channels, de"})
    void sentTextIsTheGoldenOne(String dialect, String locale) throws Exception {
        Locale.setDefault(Locale.forLanguageTag(locale));
        String sent = transcript(dialect);
        String folder = System.getProperty("golden.write");
        if (folder != null) {
            Files.writeString(Path.of(folder, "sent-" + dialect + ".txt"), sent);
        }
        try (InputStream golden = getClass().getResourceAsStream("sent-" + dialect + ".txt")) {
            assertThat(sent).isEqualTo(new String(golden.readAllBytes(), StandardCharsets.UTF_8));
        }
    }
}
