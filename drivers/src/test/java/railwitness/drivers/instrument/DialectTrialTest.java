package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.instrument.DialectTrial.Tried;
import railwitness.drivers.line.Answer;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.PeerLine;
import railwitness.drivers.time.VirtualScheduler;

class DialectTrialTest {
    private static final Duration PATIENCE = Duration.ofMillis(500);

    /** An old supply: no error queue, no protections, no status; its limits are read with other words. */
    private static final Map<String, String> KNOWN = Map.of(
            "*IDN?", "HARBOUR,PS 15-30,77,1.0",
            "VOLT?", "13.80",
            "OUTP?", "OFF",
            "MEAS:VOLT?", "0.01",
            "MEAS:CURR?", "0.00");

    private final List<String> heard = new ArrayList<>();

    private List<Tried> tried(Dialect dialect, String... kinds) {
        VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
        Line line = new PeerLine(
                "A",
                message -> {
                    heard.add(message);
                    String reply = KNOWN.get(message);
                    return reply == null
                            ? Answer.silence(Duration.ofMillis(1))
                            : Answer.of(reply, Duration.ofMillis(5));
                },
                scheduler);
        return new DialectTrial(line, PATIENCE).of(dialect, Set.of(kinds));
    }

    private static Tried of(List<Tried> all, String key) {
        return all.stream().filter(one -> one.key().startsWith(key)).findFirst().orElseThrow();
    }

    @Test
    void eachQuestionSaysWhetherItHolds() {
        List<Tried> all = tried(Dialects.shipped().named("scpi-1999"), "supply");
        assertThat(of(all, "identity").holds()).isTrue();
        assertThat(of(all, "supply.volts").reply()).isEqualTo("13.80");
        assertThat(of(all, "supply.amps").holds()).isFalse();
        assertThat(of(all, "supply.is_on").holds()).isTrue();
        assertThat(of(all, "supply.over_volts").words()).isEqualTo("no answer within 0.5 s");
        assertThat(all).filteredOn(one -> one.needed() && !one.holds()).isEmpty();
    }

    @Test
    void nothingButQuestionsIsEverSent() {
        for (String name : Dialects.SHIPPED) {
            tried(Dialects.shipped().named(name), "meter", "supply", "load", "scope");
        }
        assertThat(heard).isNotEmpty().allMatch(DialectTrial::isHarmless);
        assertThat(heard).noneMatch(message -> message.matches("(?i).*(ON|OFF|RST|CONF|INIT)\\b.*"));
    }

    @Test
    void aQuestionThatHidesACommandIsNotSent() {
        assertThat(DialectTrial.isHarmless("OUTP ON;OUTP?")).isFalse();
        assertThat(DialectTrial.isHarmless("OUTP ON")).isFalse();
        assertThat(DialectTrial.isHarmless("OUTP?\nOUTP ON")).isFalse();
        assertThat(DialectTrial.isHarmless("STAT:QUES:COND?")).isTrue();
    }

    @Test
    void theDraftCanBeReadAndLeavesOutWhatIsNotAnswered(@TempDir Path folder) throws Exception {
        List<Tried> all = tried(Dialects.shipped().named("scpi-1999"), "supply");
        Path file = folder.resolve("mine.toml");
        Files.writeString(file, DialectDraft.of(Dialects.textOf("scpi-1999"), all));
        Dialect mine = Dialects.of(file);
        assertThat(mine.identity().matcher("HARBOUR,PS 15-30,77,1.0").matches()).isTrue();
        assertThat(mine.identity().matcher("OTHER,PS 15-30,77,1.0").matches()).isFalse();
        assertThat(mine.error()).isEmpty();
        assertThat(mine.supply().orElseThrow().overVolts()).isEmpty();
        assertThat(mine.supply().orElseThrow().states()).hasSize(1);
        assertThat(Files.readString(file)).contains("# not answered: over_volts");
    }
}
