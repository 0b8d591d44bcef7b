package railwitness.logger.ui.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import railwitness.drivers.time.RealScheduler;

@Timeout(60)
class ConsolePersonTest {
    private final RealScheduler scheduler = new RealScheduler();
    private final StringWriter out = new StringWriter();
    private final PipedOutputStream hands = new PipedOutputStream();
    private final List<String> done = new ArrayList<>();

    private ConsolePerson person(boolean terminal) throws IOException {
        return new ConsolePerson(scheduler, new PrintWriter(out), new PipedInputStream(hands), terminal);
    }

    private void type(String text) throws IOException {
        hands.write(text.getBytes(StandardCharsets.US_ASCII));
        hands.flush();
    }

    private void until(BooleanSupplier condition) {
        long limit = System.nanoTime() + 20_000_000_000L;
        scheduler.after(Duration.ofMillis(50), () -> {});
        scheduler.runUntil(() -> {
            scheduler.after(Duration.ofMillis(20), () -> {});
            return condition.getAsBoolean() || System.nanoTime() > limit;
        });
        assertThat(condition.getAsBoolean()).as(out.toString()).isTrue();
    }

    @Test
    void promptsAreAnsweredOneAfterTheOther() throws IOException {
        ConsolePerson person = person(true);
        person.act("Switch the remote turn-on ON", () -> done.add("on"));
        person.read("Read the meter", value -> done.add("read " + value.orElse(-1)));
        type("\n");
        until(() -> done.equals(List.of("on")));
        type("abc\n36,7\n");
        until(() -> done.equals(List.of("on", "read 36.7")));
        assertThat(out.toString()).contains(">> Switch the remote turn-on ON", "'abc' is not a number. Read the meter");
    }

    /** A prompt that off has overtaken is not answered by what is typed for the next one. */
    @Test
    void onlyTheWordEndsTheQuestionForTheDisconnect() throws IOException {
        ConsolePerson person = person(true);
        person.act("Switch the load bank", () -> done.add("load"));
        person.forget();
        person.disconnect("NOT confirmed off", () -> done.add("open"));
        type("\n\nyes\n");
        long wait = System.nanoTime() + 1_500_000_000L;
        until(() -> System.nanoTime() > wait);
        assertThat(done).isEmpty();
        type("open\n");
        until(() -> done.equals(List.of("open")));
    }

    @Test
    void theEndOfAPipeIsToldAtOnceAndAtEachQuestionAfterIt() throws IOException {
        ConsolePerson person = person(false);
        List<Boolean> gone = new ArrayList<>();
        person.whenGone(gone::add);
        hands.close();
        until(() -> gone.equals(List.of(false)));
        person.read("Read the meter", value -> done.add("read"));
        until(() -> gone.equals(List.of(false, true)));
        assertThat(done).isEmpty();
    }

    @Test
    void answersThatWaitInAPipeAreUsedBeforeItsEndCounts() throws IOException {
        ConsolePerson person = person(false);
        List<Boolean> gone = new ArrayList<>();
        person.whenGone(gone::add);
        type("\n12.5\n");
        hands.close();
        until(() -> gone.equals(List.of(false)));
        person.act("Switch", () -> done.add("switched"));
        person.read("Read", (OptionalDouble value) -> done.add("read " + value.orElse(-1)));
        until(() -> done.equals(List.of("switched", "read 12.5")));
        assertThat(gone).containsExactly(false);
        person.act("Switch back", () -> done.add("no"));
        until(() -> gone.equals(List.of(false, true)));
    }

    /** An input that never ends does not fill the memory. */
    @Test
    void anEndlessInputIsReadOnlyAFewLinesAhead() throws IOException {
        long[] read = {0};
        InputStream endless = new InputStream() {
            @Override
            public int read() {
                read[0]++;
                return '\n';
            }

            @Override
            public int read(byte[] some, int from, int length) {
                some[from] = '\n';
                read[0]++;
                return 1;
            }
        };
        ConsolePerson person = new ConsolePerson(scheduler, new PrintWriter(out), endless, false);
        long wait = System.nanoTime() + 500_000_000L;
        until(() -> System.nanoTime() > wait);
        long ahead = read[0];
        assertThat(ahead).isBetween(50L, 20_000L);
        person.act("Switch", () -> done.add("switched"));
        until(() -> done.equals(List.of("switched")));
    }
}
