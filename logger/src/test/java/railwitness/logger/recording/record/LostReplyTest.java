package railwitness.logger.recording.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import railwitness.drivers.bench.InstrumentSheet;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.Line;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.time.VirtualScheduler;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.Recorder;
import railwitness.logger.recording.store.SessionState;

/** One reply that is lost, of any instrument at any moment of a run, trips nothing; when everything falls silent, it does. */
class LostReplyTest {
    private static final int RUNS = 40;
    private static final long SEED = 20261128;

    @TempDir
    Path folder;

    private int files;

    /** The questions of one instrument, of which some are not heard; counted from the moment the output is on. */
    private static final class Deaf implements Line {
        private final Line line;
        private final Runnable deafen;
        private final Runnable cure;
        private final Supplier<Boolean> lost;

        Deaf(Line line, Runnable deafen, Runnable cure, Supplier<Boolean> lost) {
            this.line = line;
            this.deafen = deafen;
            this.cure = cure;
            this.lost = lost;
        }

        @Override
        public String port() {
            return line.port();
        }

        @Override
        public void send(String message) {
            line.send(message);
        }

        @Override
        public String ask(String message, Duration deadline) {
            if (!lost.get()) {
                return line.ask(message, deadline);
            }
            deafen.run();
            try {
                return line.ask(message, deadline);
            } finally {
                cure.run();
            }
        }

        @Override
        public byte[] askBlock(String message, Duration deadline) {
            return line.askBlock(message, deadline);
        }

        @Override
        public boolean cutIn(byte[] bytes) {
            return line.cutIn(bytes);
        }

        @Override
        public void close() {
            line.close();
        }
    }

    /** A session in which one instrument's questions number {@code from} to {@code to} under power are not heard. */
    private final class Session {
        final StoppedSession listener = new StoppedSession(-1, run -> {});
        final Map<String, Integer> asked = new HashMap<>();
        final VirtualBench far;
        RunEnd end;

        Session(String instrument, int from, int to) {
            VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
            Sheets sheets = StoppedSession.sheets(Sheets.demo().bench().text());
            far = FixtureMaker.bench(sheets, List.of(), 1, scheduler::nowNanos);
            Map<String, String> names = new HashMap<>();
            sheets.bench()
                    .content()
                    .instruments()
                    .forEach(one -> names.put(one.port().port(), one.name()));
            LiveSession session = new LiveSession(
                    sheets,
                    scheduler,
                    port -> {
                        String name = names.get(port.port());
                        return new Deaf(
                                far.opener(scheduler).open(port),
                                () -> far.instrument(name).trouble(Trouble.SILENT),
                                () -> far.instrument(name).cure(),
                                () -> {
                                    boolean on = far.supply("supply").isOn();
                                    int count = on ? asked.merge(name, 1, Integer::sum) : 0;
                                    boolean mine = instrument.equals(name) || instrument.equals("all");
                                    return mine && count >= from && count < to;
                                });
                    },
                    WorkerMaker.inline(scheduler),
                    Recorder::inline,
                    new RehearsalPerson(scheduler, far),
                    listener);
            end = session.run(folder.resolve("run" + files++ + ".session"), StoppedSession.head());
        }
    }

    @Test
    void oneLostReplyAnywhereTripsNothing() {
        List<String> instruments = Sheets.demo().bench().content().instruments().stream()
                .map(InstrumentSheet::name)
                .toList();
        Map<String, Integer> asked = new Session("none", 0, 0).asked;
        Random random = new Random(SEED);
        System.out.println("seed " + SEED + ", questions under power " + asked);
        List<String> wrong = new ArrayList<>();
        for (int run = 0; run < RUNS; run++) {
            boolean supply = run % 2 == 0;
            String instrument = supply ? "supply" : instruments.get(random.nextInt(instruments.size()));
            int question = 1 + random.nextInt(asked.get(instrument) - 1);
            Session session = new Session(instrument, question, question + 1);
            if (session.end.state() != SessionState.COMPLETE) {
                wrong.add(instrument + " question " + question + ": "
                        + session.listener.told.stream()
                                .filter(words -> words.startsWith("trip") || words.startsWith("line"))
                                .toList());
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void everythingLostTwiceInARowTrips() {
        Session session = new Session("all", 60, 62);
        assertThat(session.end.state()).isEqualTo(SessionState.TRIPPED);
        assertThat(session.listener.told).anyMatch(words -> words.contains("was not read for"));
        assertThat(session.far.supply("supply").isOn()).isFalse();
    }
}
