package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import railwitness.analysis.design.Design;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.fixture.CabinSheet;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.safety.interlock.Limits;
import railwitness.safety.interlock.Phase;
import railwitness.safety.interlock.Watch;

/** What is watched follows from the sheet's limits and from what the bench reads; nothing is watched that nobody reads. */
class WatchesTest {
    private static final String DESIGN = CabinSheet.with("""
            full_load_A = 5
            [[rail]]
            name = "minus"
            nominal_V = -22
            full_load_A = 5
            """);
    private static final String LIMITS = """
            [limits]
            input_A = 17
            standby_A = 0.02
            imbalance_V = 1.5
            heatsink_degC = 80
            """;
    private static final String PLAN =
            "[[stage]]\nkind = \"power-up\"\ncurrent_limit_A = 3\n[[stage]]\nkind = \"no-load\"\n";
    private static final Duration ANSWER = Duration.ofSeconds(1);
    private static final Set<Channel> ALL = Set.of(
            new Channel("input", Quantity.CURRENT),
            new Channel("plus", Quantity.VOLTAGE),
            new Channel("minus", Quantity.VOLTAGE),
            new Channel("heatsink", Quantity.TEMPERATURE));

    /** What a supply with a serial line reads back itself. */
    private static final Set<Channel> SUPPLY =
            Set.of(new Channel("supply", Quantity.VOLTAGE), new Channel("supply", Quantity.CURRENT));

    private static List<Watch> watches(String design, Set<Channel> read, Duration interval) {
        Design unit = Sheets.design("design.toml", design).content();
        RunLimits limits = RunLimits.of(unit, Sheets.plan("plan.toml", PLAN).content(), OptionalDouble.of(40));
        Set<Channel> all = new HashSet<>(read);
        all.addAll(SUPPLY);
        return Watches.of(unit, all, new Watches.Pace(interval, channel -> ANSWER), limits);
    }

    private static Watch named(List<Watch> watches, String name) {
        return watches.stream()
                .filter(watch -> watch.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Limits limits(List<Watch> watches, String name, Phase phase) {
        return named(watches, name).limits().get(phase);
    }

    @Test
    void withNothingReadTheSupplyAloneIsWatched() {
        assertThat(watches(DESIGN + LIMITS, Set.of(), Duration.ofMillis(250)))
                .extracting(Watch::name)
                .containsExactly("supply voltage", "supply current");
    }

    /** Knobs alone and no meter that sends: nothing can be watched, and the words before power say so. */
    @Test
    void aSupplyThatReadsNothingBackIsNotWatched() {
        Design unit = Sheets.design("design.toml", DESIGN + LIMITS).content();
        RunLimits limits = RunLimits.of(unit, Sheets.plan("plan.toml", PLAN).content(), OptionalDouble.of(40));
        assertThat(Watches.of(unit, Set.of(), new Watches.Pace(Duration.ofMillis(250), channel -> ANSWER), limits))
                .isEmpty();
    }

    @Test
    void eachStatedLimitIsWatchedWhereItsChannelIsRead() {
        assertThat(watches(DESIGN + LIMITS, ALL, Duration.ofMillis(250)))
                .extracting(Watch::name)
                .containsExactly(
                        "supply voltage",
                        "supply current",
                        "input current",
                        "plus rail",
                        "minus rail",
                        "imbalance",
                        "heat sink");
    }

    @Test
    void withoutLimitsOnTheSheetThoseThatNeedOneAreLeftOut() {
        assertThat(watches(DESIGN, ALL, Duration.ofMillis(250)))
                .extracting(Watch::name)
                .doesNotContain("imbalance", "heat sink", "loss beyond the predicted");
    }

    @Test
    void standbyHasABoundOfItsOwnAndAReversedShuntDoesNotHideACurrent() {
        List<Watch> watches = watches(DESIGN + LIMITS, ALL, Duration.ofMillis(250));
        assertThat(limits(watches, "input current", Phase.STANDBY).hold(0.021)).isFalse();
        assertThat(limits(watches, "input current", Phase.UP).hold(16.9)).isTrue();
        assertThat(limits(watches, "input current", Phase.UP).hold(17.1)).isFalse();
        assertThat(named(watches, "input current").subject().value(channel -> -29.6))
                .isEqualTo(29.6);
    }

    @Test
    void aRailMayBeLowUntilItIsUpAndIsNeverTooHigh() {
        List<Watch> watches = watches(DESIGN + LIMITS, ALL, Duration.ofMillis(250));
        assertThat(limits(watches, "plus rail", Phase.INRUSH).hold(0)).isTrue();
        assertThat(limits(watches, "plus rail", Phase.INRUSH).hold(1.15 * 24 + 0.1))
                .isFalse();
        assertThat(limits(watches, "minus rail", Phase.UP).hold(1.15 * 24 + 0.1))
                .isFalse();
        assertThat(named(watches, "minus rail").subject().value(channel -> -24.0))
                .isEqualTo(24.0);
    }

    /** Asked each ten seconds, a channel is not silent after three. */
    @Test
    void aSlowBurnInMayMissThreeRounds() {
        List<Watch> slow = watches(DESIGN + LIMITS, ALL, Duration.ofSeconds(10));
        assertThat(slow).allMatch(watch -> watch.age().equals(Duration.ofSeconds(30)));
        List<Watch> quick = watches(DESIGN + LIMITS, ALL, Duration.ofMillis(250));
        assertThat(named(quick, "plus rail").age()).isEqualTo(Duration.ofSeconds(3));
    }

    /** A round, the wait for the lost reply and the line back in step; less than two lost replies take. */
    @Test
    void oneLostReplyFitsIntoTheAgeAndTwoDoNot() {
        Duration interval = Duration.ofMillis(250);
        for (Watch watch : watches(DESIGN + LIMITS, Set.of(), interval)) {
            assertThat(watch.age()).isGreaterThan(ANSWER.plus(interval.multipliedBy(2)));
            assertThat(watch.age()).isLessThan(ANSWER.multipliedBy(2).plus(interval));
        }
    }
}
