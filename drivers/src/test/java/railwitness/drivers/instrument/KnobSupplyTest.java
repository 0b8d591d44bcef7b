package railwitness.drivers.instrument;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import railwitness.drivers.line.LineException;
import railwitness.drivers.time.VirtualScheduler;

class KnobSupplyTest {
    private final VirtualScheduler scheduler = new VirtualScheduler(Instant.EPOCH);
    private final List<String> asked = new ArrayList<>();
    private double[] shows = {13.8};
    private boolean willing = true;
    private int turns;

    /** Takes two seconds for everything. */
    private final Hand hand = new Hand() {
        @Override
        public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
            asked.add(turn.kind() + " " + turn.value());
            double next = shows[Math.min(turns++, shows.length - 1)];
            if (willing) {
                scheduler.after(Duration.ofSeconds(2), () -> shown.accept(OptionalDouble.of(next)));
            }
        }

        @Override
        public void switchOff(Runnable isOff) {
            asked.add("off");
            scheduler.after(Duration.ofSeconds(2), isOff);
        }

        @Override
        public void offNow() {
            asked.add("NOW");
        }

        @Override
        public void forget() {
            asked.add("forgotten");
        }
    };

    private final InstrumentWorker<Supply> worker = WorkerMaker.inline(scheduler)
            .byHand(wait -> new KnobSupply("old supply", setting(), hand, wait, scheduler::nowNanos));

    private static SupplySetting setting() {
        return new SupplySetting(
                OptionalDouble.of(16),
                OptionalDouble.of(30),
                OptionalDouble.of(0.1),
                OptionalDouble.of(0.1),
                1,
                false,
                2,
                12,
                0.1);
    }

    private <T> RequestOutcome<T> done(java.util.concurrent.Callable<T> request) {
        List<RequestOutcome<T>> outcome = new ArrayList<>();
        worker.ask(request, outcome::add);
        scheduler.runUntil(() -> !outcome.isEmpty());
        return outcome.get(0);
    }

    private static String words(RequestOutcome<?> outcome) {
        String[] words = {""};
        outcome.either(value -> words[0] = String.valueOf(value), why -> words[0] = why.getMessage());
        return words[0];
    }

    @Test
    void whatIsSetIsReadBackAsItWasTypedAndTakesThePersonsTime() {
        assertThat(words(done(() -> {
                    worker.instrument().setVolts(13.84);
                    return worker.instrument().voltsSetting();
                })))
                .isEqualTo("13.8");
        assertThat(scheduler.nowNanos()).isEqualTo(2_000_000_000L);
        assertThat(asked).containsExactly("SET_VOLTS 13.84");
    }

    @Test
    void aDisplayThatShowsSomethingElseIsAskedForAgain() {
        shows = new double[] {12.1, 13.8};
        done(() -> {
            worker.instrument().setVolts(13.8);
            return 0;
        });
        assertThat(asked).hasSize(2);
    }

    @Test
    void nobodyIsAskedTwiceForWhatTheKnobStandsAt() {
        done(() -> {
            worker.instrument().setVolts(13.8);
            worker.instrument().setVolts(13.8);
            return 0;
        });
        assertThat(asked).hasSize(1);
    }

    @Test
    void moreThanTheSheetAllowsIsAskedOfNobody() {
        assertThat(words(done(() -> {
                    worker.instrument().setVolts(17);
                    return 0;
                })))
                .contains("must be 0 to 16");
        assertThat(asked).isEmpty();
    }

    @Test
    void offIsOncePersonsWordAndThenAskedAnew() {
        assertThat(words(done(() -> {
                    worker.instrument().switchOff();
                    return worker.instrument().isOn();
                })))
                .isEqualTo("false");
        assertThat(words(done(() -> worker.instrument().isOn()))).isEqualTo("false");
        assertThat(asked).containsExactly("off", "off");
    }

    @Test
    void offNowIsSaidAtOnceAndGivesUpWhatWasAsked() {
        willing = false;
        List<RequestOutcome<Integer>> outcome = new ArrayList<>();
        worker.ask(
                () -> {
                    worker.instrument().setVolts(13.8);
                    return 0;
                },
                outcome::add);
        scheduler.after(Duration.ofSeconds(1), () -> worker.instrument().cutIn(new byte[0]));
        scheduler.runUntil(() -> !outcome.isEmpty());
        assertThat(asked).containsExactly("SET_VOLTS 13.8", "NOW", "forgotten");
        assertThat(words(outcome.get(0))).contains("more urgent");
        assertThat(scheduler.nowNanos()).isEqualTo(1_000_000_000L);
    }

    @Test
    void aStationThatIsClosedLetsItsRequestGo() {
        willing = false;
        List<RequestOutcome<Integer>> outcome = new ArrayList<>();
        worker.ask(
                () -> {
                    worker.instrument().setVolts(13.8);
                    return 0;
                },
                outcome::add);
        scheduler.post(worker::close);
        scheduler.runUntil(() -> !outcome.isEmpty());
        outcome.get(0).either(value -> {}, why -> assertThat(why).isInstanceOf(LineException.class));
        assertThat(words(outcome.get(0))).contains("closed");
    }
}
