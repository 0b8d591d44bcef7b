package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.junit.jupiter.api.Test;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.safety.interlock.Phase;
import railwitness.safety.power.Result;

/** The way to the state that a step needs, and what becomes of it when it is stopped, refused or not answered. */
class PowerPathTest {
    private static final Duration LONG = Duration.ofMinutes(2);

    private static Step step(PathBench bench, boolean remoteOn, boolean mayGiveUp) {
        Step some = bench.setup.steps().get(0);
        return new Step("no-load", "", 13.8, Map.of(), remoteOn, some.timing(), some.hold(), mayGiveUp);
    }

    @Test
    void aSoundUnitComesUpThroughItsPhases() {
        try (PathBench bench = new PathBench(PathBench::rehearsal)) {
            assertThat(bench.up().isDone()).isTrue();
            assertThat(bench.phases).containsSubsequence(Phase.FIRST_POWER, Phase.STANDBY, Phase.INRUSH, Phase.UP);
            assertThat(bench.path.railsUp()).isTrue();
            assertThat(bench.on()).isTrue();
        }
    }

    @Test
    void turnedOffItStandsByAndTurnedOnAgainItComesUp() {
        try (PathBench bench = new PathBench(PathBench::rehearsal)) {
            bench.up();
            bench.phases.clear();
            assertThat(bench.within(LONG, then -> bench.path.bring(step(bench, false, false), then))
                            .isDone())
                    .isTrue();
            assertThat(bench.phases).containsExactly(Phase.WORKING, Phase.STANDBY);
            bench.pass(Duration.ofSeconds(20));
            assertThat(bench.path.railsUp()).isFalse();
            bench.phases.clear();
            assertThat(bench.within(LONG, then -> bench.path.bring(step(bench, true, false), then))
                            .isDone())
                    .isTrue();
            assertThat(bench.phases).containsExactly(Phase.INRUSH, Phase.WORKING, Phase.UP);
        }
    }

    /** Where rails may go low nobody watches their lower bound; they are brought up again before it counts. */
    @Test
    void aStepThatMayGiveUpLetsTheRailsGo() {
        try (PathBench bench = new PathBench(PathBench::rehearsal)) {
            bench.up();
            bench.phases.clear();
            bench.within(LONG, then -> bench.path.bring(step(bench, true, true), then));
            assertThat(bench.path.mayBeDown()).isTrue();
            assertThat(bench.phases).containsExactly(Phase.WORKING);
            assertThat(bench.within(LONG, bench.path::backUp).isDone()).isTrue();
            assertThat(bench.path.mayBeDown()).isFalse();
            assertThat(bench.phases).endsWith(Phase.UP);
        }
    }

    /** Escape at each thing that is done on the way up: off, not up, and nothing on again afterwards. */
    @Test
    void escapeAtEveryMomentOfTheWayUp() {
        int all = escapedAt(Integer.MAX_VALUE, new ArrayList<>());
        List<String> wrong = new ArrayList<>();
        for (int at = 1; at < all; at++) {
            escapedAt(at, wrong);
        }
        assertThat(all).isGreaterThan(8);
        assertThat(wrong).isEmpty();
    }

    private static int escapedAt(int at, List<String> wrong) {
        try (PathBench bench = new PathBench(PathBench::rehearsal)) {
            int[] count = {0};
            bench.when = what -> {
                if (++count[0] == at) {
                    bench.power.cutOff();
                    bench.scheduler.post(() -> bench.power.off("Escape", ended -> {}));
                }
            };
            Result result = bench.up();
            int before = count[0];
            bench.pass(Duration.ofSeconds(30));
            if (at <= before && bench.on()) {
                wrong.add("at " + at + " it is on: " + bench.told);
            }
            if (at <= before && result != null && result.isDone()) {
                wrong.add("at " + at + " it says that it is up: " + bench.told);
            }
            return before;
        }
    }

    /** From the moment the interlock refuses nothing is raised any more. */
    @Test
    void whatIsRefusedMidWayEndsInWords() {
        for (String moment : List.of("voltage", "output on", "current limit")) {
            try (PathBench bench = new PathBench(PathBench::rehearsal)) {
                bench.when = what -> bench.permitted &= !what.equals(moment);
                Result result = bench.up();
                assertThat(result).as(moment).isNotNull();
                assertThat(result.isDone()).as(moment).isFalse();
                assertThat(result.words()).as(moment).isNotBlank();
                assertThat(bench.phases).as(moment).doesNotContain(Phase.UP);
            }
        }
    }

    /** The remote turn-on is switched by hand, and nobody does: after the plan's limit that is said, and nothing moves. */
    @Test
    void aPromptThatNobodyAnswersTimesOut() {
        String bench = Sheets.demo().bench().text().replaceAll("(?m)^drives_remote.*\\R", "");
        List<String> late = new ArrayList<>();
        try (PathBench own = new PathBench(
                bench, made -> new PatientPerson(made.scheduler, new Nobody(), Duration.ofSeconds(60), late::add))) {
            assertThat(own.setup.drivesRemote()).isFalse();
            assertThat(own.up()).isNull();
            assertThat(late).hasSize(1).first().asString().contains("remote turn-on");
            assertThat(own.phases).doesNotContain(Phase.UP);
        }
    }

    private static final class Nobody implements Person {
        @Override
        public void act(String sentence, Runnable done) {
            // nobody is there
        }

        @Override
        public void read(String sentence, Consumer<OptionalDouble> value) {
            // nobody is there
        }

        @Override
        public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
            // nobody is there
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            // nobody is there
        }

        @Override
        public void forget() {
            // nothing was asked of anybody
        }
    }
}
