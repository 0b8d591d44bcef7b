package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.plan.Step;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;
import railwitness.logger.recording.store.StepEntry;
import railwitness.logger.recording.store.StepOutcome;
import railwitness.logger.recording.store.StoreException;
import railwitness.safety.power.Result;

/** The steps of a plan one after the other, and what becomes of them when they are stopped, refused or not answered. */
class PlanStepsTest {
    private static final String HEAT_SINK = """
            [[instrument]]
            name = "heat-sink meter"
            kind = "meter"
            port = "heatsink-meter"
            dialect = "scpi-1999"
            reads = "heatsink.temperature"
            accuracy.temperature = { offset = 1.0, stated_as = "limit" }
            """;
    private static final Duration TICK = Duration.ofMillis(100);

    @TempDir
    Path folder;

    private int files;

    /** The steps with the least around them that a run is. */
    private final class Planned implements PlanSteps.Course, RunListener, AutoCloseable {
        final List<String> told = new ArrayList<>();
        final List<StepEntry> entries = new ArrayList<>();
        final List<String> stops = new ArrayList<>();
        final PathBench bench;
        final Recorder recorder;
        final PlanSteps steps;
        private Consumer<String> at = words -> {};
        private boolean stepping;
        private boolean done;

        Planned(String text) {
            bench = new PathBench(text, own -> PathBench.rehearsal(own));
            recorder = Recorder.inline(
                    SessionWriter.create(folder.resolve("plan" + files++ + ".session"), StoppedSession.head()),
                    trouble -> bench.scheduler.post(() -> stop("recorder", trouble.getMessage())));
            Person person = new PatientPerson(
                    bench.scheduler,
                    new Absent(PathBench.rehearsal(bench)),
                    Duration.ofSeconds(60),
                    words -> stop("person asked", words));
            StepSetter setter =
                    new StepSetter(bench.setup, bench.power, person, moving -> {}, event -> tell(event.what()));
            steps = new PlanSteps(bench.setup, recorder, person, this, bench.path, setter, this);
            bench.swept = result -> {
                if (stepping) {
                    result.readings().forEach(steps::heard);
                    steps.limits(result);
                    steps.conditions(result);
                }
            };
            bench.when = this::tell;
        }

        Planned run() {
            tick();
            bench.path.powerUp(
                    way -> {
                        stepping = true;
                        steps.standby(way);
                    },
                    result -> {
                        if (result.isDone() && stops.isEmpty()) {
                            stepping = true;
                            steps.next();
                        }
                    });
            boolean[] late = {false};
            bench.scheduler.after(Duration.ofMinutes(15), () -> late[0] = true);
            bench.scheduler.runUntil(() -> done || late[0] || !stops.isEmpty());
            return this;
        }

        private void tick() {
            if (stepping) {
                steps.tick();
            }
            bench.scheduler.after(TICK, this::tick);
        }

        private void tell(String words) {
            told.add(words);
            at.accept(words);
        }

        @Override
        public boolean stepping() {
            return stepping;
        }

        @Override
        public void turningOn() {
            stepping = false;
        }

        @Override
        public void rest(Consumer<Result> then) {
            throw new AssertionError("nothing here rests");
        }

        @Override
        public void stop(String by, String words) {
            if (stops.isEmpty()) {
                stops.add(by + ": " + words);
                stepping = false;
                bench.power.off(words, ended -> {});
                steps.giveUp(words);
            }
        }

        @Override
        public void happened(SessionEvent event) {
            tell(event.what() + ": " + event.words());
        }

        @Override
        public void done() {
            done = true;
            stepping = false;
        }

        @Override
        public void began(int index, int of, Step step) {
            tell("began " + step.stage() + " " + step.name());
        }

        @Override
        public void averaging(Step step, boolean settled) {
            tell("averaging " + step.stage() + " " + step.name());
        }

        @Override
        public void ended(Step step, StepEntry entry) {
            entries.add(entry);
            tell("ended " + step.stage() + " " + step.name());
        }

        @Override
        public void close() {
            recorder.finish(SessionState.STOPPED);
            recorder.close();
            bench.close();
        }
    }

    /** Does what is switched, but reads no meter. */
    private static final class Absent implements Person {
        private final Person hands;

        Absent(Person hands) {
            this.hands = hands;
        }

        @Override
        public void act(String sentence, Runnable done) {
            hands.act(sentence, done);
        }

        @Override
        public void read(String sentence, Consumer<OptionalDouble> value) {
            // nobody looks
        }

        @Override
        public void disconnect(String sentence, Runnable open) {
            hands.disconnect(sentence, open);
        }

        @Override
        public void forget() {
            hands.forget();
        }
    }

    private Planned planned() {
        return new Planned(Sheets.demo().bench().text());
    }

    @Test
    void everyStepIsMeasuredInTheOrderOfThePlan() {
        try (Planned plan = planned().run()) {
            assertThat(plan.stops).isEmpty();
            assertThat(plan.told.stream()
                            .filter(words -> words.startsWith("began"))
                            .toList())
                    .startsWith("began standby drain")
                    .containsSubsequence("began load-sweep 50 %", "began line-sweep 11 V");
            assertThat(plan.entries.stream().filter(entry -> entry.outcome() == StepOutcome.MEASURED))
                    .hasSizeGreaterThanOrEqualTo(5);
        }
    }

    /** Escape at each thing that is told: the step under way is given up, none begins after it, the output goes off. */
    @Test
    void escapeAtEveryMoment() {
        int all;
        try (Planned whole = planned().run()) {
            all = whole.told.size();
        }
        List<String> wrong = new ArrayList<>();
        for (int k = 1; k < all; k++) {
            escapedAt(k, wrong);
        }
        System.out.println("escaped at each of " + all + " moments");
        assertThat(all).isGreaterThan(30);
        assertThat(wrong).isEmpty();
    }

    private void escapedAt(int k, List<String> wrong) {
        try (Planned plan = planned()) {
            plan.at = words -> {
                if (plan.told.size() == k) {
                    plan.bench.power.cutOff();
                    plan.bench.scheduler.post(() -> plan.stop("person", "Escape"));
                }
            };
            plan.run();
            int begun = count(plan, "began");
            plan.bench.pass(Duration.ofSeconds(30));
            if (plan.bench.on()) {
                wrong.add(k + " is on: " + plan.told);
            }
            if (count(plan, "began") != begun) {
                wrong.add(k + " goes on: " + plan.told);
            }
            if (count(plan, "began") != count(plan, "ended")) {
                wrong.add(k + " leaves a step open: " + plan.told);
            }
            if (plan.stops.size() != 1 || !plan.stops.get(0).equals("person: Escape")) {
                wrong.add(k + " is stopped by " + plan.stops);
            }
        }
    }

    private static int count(Planned plan, String what) {
        return (int) plan.told.stream().filter(words -> words.startsWith(what)).count();
    }

    /** A recorder that fails says so once; the step ends, and none begins after it. */
    @Test
    void aWriterThatThrowsEndsTheSteps() {
        for (String moment : List.of("began no-load", "averaging load-sweep", "ended load-sweep")) {
            try (Planned plan = planned()) {
                boolean[] once = {true};
                plan.at = words -> {
                    if (once[0] && words.startsWith(moment)) {
                        once[0] = false;
                        plan.recorder.offer(writer -> {
                            throw new StoreException("the disk is full");
                        });
                    }
                };
                plan.run();
                int begun = count(plan, "began");
                plan.bench.pass(Duration.ofSeconds(30));
                assertThat(plan.stops).as(moment).singleElement().asString().contains("the disk is full");
                assertThat(count(plan, "began")).as(moment).isEqualTo(begun).isEqualTo(count(plan, "ended"));
                assertThat(plan.bench.on()).as(moment).isFalse();
            }
        }
    }

    /** What the bench cannot do is not tried, and the next step comes all the same. */
    @Test
    void aStepOutOfReachIsSkippedInWords() {
        String small = Sheets.demo().bench().text().replace("rail = \"plus\"\n", "rail = \"plus\"\nhighest_A = 1\n");
        assertThat(small).contains("highest_A = 1\n");
        try (Planned plan = new Planned(small).run()) {
            assertThat(plan.stops).isEmpty();
            StepEntry beyond = plan.entries.stream()
                    .filter(entry -> entry.stage().equals("load-sweep"))
                    .findFirst()
                    .orElseThrow();
            assertThat(beyond.outcome()).isEqualTo(StepOutcome.NOT_REACHED);
            assertThat(beyond.reason()).contains("on plus, the load takes 1.00 A");
            assertThat(plan.told).anyMatch(words -> words.startsWith("began line-sweep"));
            assertThat(count(plan, "began")).isEqualTo(count(plan, "ended"));
        }
    }

    /** A set point that is refused ends the run, once and with the reason. */
    @Test
    void aRefusedSetPointStops() {
        try (Planned plan = planned()) {
            plan.at = words -> plan.bench.permitted &= !words.startsWith("began load-sweep");
            plan.run();
            plan.bench.pass(Duration.ofSeconds(30));
            assertThat(plan.stops).singleElement().asString().contains("the interlock does not permit it");
            assertThat(plan.told).noneMatch(words -> words.startsWith("averaging load-sweep"));
            assertThat(plan.bench.on()).isFalse();
        }
    }

    /** A meter that is read by eye, and nobody reads it: the average waits no longer than the plan says. */
    @Test
    void aMeterThatNobodyReadsStops() {
        String text = Sheets.demo()
                .bench()
                .text()
                .replace(HEAT_SINK, "[[hand_read]]\nname = \"old thermometer\"\nreads = \"heatsink.temperature\"\n");
        assertThat(text).contains("old thermometer");
        try (Planned plan = new Planned(text).run()) {
            assertThat(plan.stops)
                    .singleElement()
                    .asString()
                    .contains("nobody answered within 60 s")
                    .contains("old thermometer");
            plan.bench.pass(Duration.ofSeconds(30));
            assertThat(plan.bench.on()).isFalse();
        }
    }
}
