package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** What each fault does to the figures, as somebody at the bench would expect it, with the reason. */
@Execution(ExecutionMode.CONCURRENT)
class VirtualFaultsTest {
    @TempDir
    static Path folder;

    private static final Map<String, Found> SESSIONS = new ConcurrentHashMap<>();

    private static Found healthy() {
        return rehearsed("");
    }

    private static Found rehearsed(String fault) {
        return SESSIONS.computeIfAbsent(fault, code -> {
            Path out = folder.resolve(("unit-" + code).replaceAll("[^a-z0-9-]", "_") + ".session");
            if (code.isEmpty()) {
                Said.by("rehearse", "--out", out.toString());
            } else {
                Said.by("rehearse", "--fault", code, "--out", out.toString());
            }
            return Found.in(out);
        });
    }

    private static double ripple(Found found, String rail) {
        return found.figure("ripple", rail);
    }

    @Test
    void theDemoIsHealthyFitAndWithoutCause() {
        assertThat(healthy().verdict()).isEqualTo("fit");
        assertThat(healthy().causes()).isEmpty();
        assertThat(healthy().state()).isEqualTo("complete");
        assertThat(healthy().json().at("/session/rehearsal").asBoolean()).isTrue();
    }

    /** Rails of 20 to 60 V out of 12 V: common practice, no source. */
    @Test
    void theDemoStepsUpAsItsTurnsPromise() {
        assertThat(healthy().figure("effective turns ratio", "plus")).isCloseTo(3.0, within(0.02));
        assertThat(healthy().figure("rail voltage", "plus")).isBetween(20.0, 60.0);
    }

    /** A closed turn is a second load on the core: power goes in without load, and the ratio stays. */
    @Test
    void aShortedTurnTakesPowerWithoutLoad() {
        Found found = rehearsed("shorted-turn=3");

        assertThat(found.figure("no-load input power", null))
                .isGreaterThan(healthy().figure("no-load input power", null) + 2);
        assertThat(found.figure("effective turns ratio", "plus")).isCloseTo(3.0, within(0.03));
        assertThat(found.causes()).contains("shorted-turn");
    }

    /** A low closed turn takes so much that the unit may not stay powered. */
    @Test
    void aHardShortedTurnEndsAtFirstPower() {
        Found found = rehearsed("shorted-turn");

        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.causes()).contains("shorted-turn");
    }

    /** One turn of twelve fewer on both halves: the ratio falls by a twelfth. */
    @Test
    void aMissingTurnShowsInTheRatio() {
        Found found = rehearsed("wrong-turns");

        assertThat(found.figure("effective turns ratio", "plus")).isCloseTo(11 / 4.0, within(0.02));
        assertThat(found.causes().get(0)).isEqualTo("wrong-turns");
        assertThat(found.verdict()).isEqualTo("not fit");
    }

    /** One turn of twelve more: the rails rise past their limit without load, and the trip itself names the cause. */
    @Test
    void oneTurnTooManyTripsOnTheRailAndIsNamed() {
        Found found = rehearsed("wrong-turns=-1");

        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.causes()).containsExactly("wrong-turns");
    }

    /** Every second pulse is missing: the filter is filled once a cycle instead of twice, so ripple more than doubles. */
    @Test
    void aWeakHalfDoublesTheRippleOfBothRails() {
        Found found = rehearsed("weak-half");

        assertThat(ripple(found, "plus")).isGreaterThan(2 * ripple(healthy(), "plus"));
        assertThat(ripple(found, "minus")).isGreaterThan(2 * ripple(healthy(), "minus"));
        assertThat(found.firstOrAlike()).contains("weak-half");
    }

    /** One drive side gives nothing; seen from the rails it is as if half of the secondary gave nothing. */
    @Test
    void aDeadDriveLooksLikeAWeakHalfFromTheRails() {
        Found found = rehearsed("dead-drive");

        assertThat(ripple(found, "plus")).isGreaterThan(2 * ripple(healthy(), "plus"));
        assertThat(found.causes()).isNotEmpty();
        assertThat(found.causes().get(0)).isIn("dead-drive", "weak-half");
    }

    /** One diode of one rail does not conduct: that rail is filled once a cycle and sags, the other is as it was. */
    @Test
    void aDeadRectifierMakesItsOwnRailRipple() {
        Found found = rehearsed("dead-rectifier");

        assertThat(ripple(found, "plus")).isGreaterThan(1.5 * ripple(found, "minus"));
        assertThat(Math.abs(found.figure("rail voltage", "plus")))
                .isLessThan(Math.abs(found.figure("rail voltage", "minus")));
        assertThat(found.causes()).contains("dead-rectifier");
    }

    /** The short loads the transformer as soon as it runs, and not before. */
    @Test
    void aShortedRectifierEndsAtFirstPowerWithTheRemoteOn() {
        Found found = rehearsed("shorted-rectifier");

        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.causes()).contains("shorted-rectifier").doesNotContain("shorted-switch");
    }

    /** Through a shorted switch the primary lies across the input, whether the unit is on or not. */
    @Test
    void aShortedSwitchDrawsCurrentWithTheRemoteOff() {
        Found found = rehearsed("shorted-switch");

        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.causes()).containsExactly("shorted-switch");
        assertThat(found.json().get("points")).isEmpty();
    }

    /** A switch that leaks drains the battery of a boat that lies still; nothing else changes. */
    @Test
    void aLeakySwitchShowsInStandbyAlone() {
        Found found = rehearsed("leaky-switch");

        assertThat(found.figure("standby current", null))
                .isGreaterThan(5 * healthy().figure("standby current", null));
        assertThat(found.figure("average efficiency", null))
                .isCloseTo(healthy().figure("average efficiency", null), within(0.005));
        assertThat(found.causes().get(0)).isEqualTo("leaky-switch");
    }

    /** A dried-out capacitor: no mean moves, only its own rail's ripple. */
    @Test
    void aTiredCapacitorMovesNoMean() {
        Found found = rehearsed("tired-capacitor");

        assertThat(ripple(found, "plus")).isGreaterThan(2 * ripple(healthy(), "plus"));
        assertThat(ripple(found, "minus")).isCloseTo(ripple(healthy(), "minus"), within(0.003));
        assertThat(found.figure("average efficiency", null))
                .isCloseTo(healthy().figure("average efficiency", null), within(0.002));
        assertThat(found.causes().get(0)).isEqualTo("tired-capacitor");
    }

    /** Resistance in leads and joints: both rails sag more with load, without load all is as it was. */
    @Test
    void leadResistanceDeepensTheSagOfBothRails() {
        Found found = rehearsed("lead-resistance");

        assertThat(found.figure("load effect as wired", "plus"))
                .isGreaterThan(healthy().figure("load effect as wired", "plus") + 0.3);
        assertThat(found.figure("no-load input power", null))
                .isCloseTo(healthy().figure("no-load input power", null), within(0.1));
        assertThat(found.causes().get(0)).isEqualTo("lead-resistance");
    }

    /** A cracked or wrong core costs power without load, like a high-ohmic shorted turn. */
    @Test
    void aWeakCoreCostsPowerWithoutLoad() {
        Found found = rehearsed("weak-core");

        assertThat(found.figure("no-load input power", null))
                .isGreaterThan(healthy().figure("no-load input power", null) + 1);
        assertThat(found.causes()).contains("weak-core");
    }

    @Test
    void theSameSeedGivesTheSameFindings() {
        Path again = folder.resolve("again.session");
        Said.by("rehearse", "--seed", "1", "--out", again.toString());

        assertThat(Found.in(again).json().get("figures"))
                .isEqualTo(healthy().json().get("figures"));
    }

    /** A clamp that conducts takes the same power at every load, as the square of the input: what the core would do. */
    @Test
    void aLeakyClampTakesPowerWithoutLoad() {
        Found found = rehearsed("leaky-clamp=40");

        assertThat(found.figure("no-load input power", null) - healthy().figure("no-load input power", null))
                .isBetween(3.5, 5.0); // 0.9 x 13.8^2 / 40
        assertThat(found.causes()).containsAnyOf("leaky-clamp", "weak-core", "shorted-turn");
    }

    /** A core that is driven one way only is a short: the first power ends it. */
    @Test
    void aReversedPrimaryHalfEndsAtFirstPower() {
        Found found = rehearsed("reversed-half");

        assertThat(found.state()).isEqualTo("tripped");
        assertThat(found.causes()).isNotEmpty();
    }

    /** Two of three switches of one side dead: the loss under load grows, without load nothing does. */
    @Test
    void deadParallelSwitchesCostUnderLoadOnly() {
        Found found = rehearsed("dead-parallel-switch=3");

        assertThat(found.figure("full-load efficiency", null))
                .isLessThan(healthy().figure("full-load efficiency", null) - 0.005);
        assertThat(found.figure("no-load input power", null))
                .isCloseTo(healthy().figure("no-load input power", null), within(0.1));
    }
}
