package railwitness.logger.recording.record;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import railwitness.drivers.instrument.PollResult;
import railwitness.drivers.reading.Reading;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;

/**
 * Runs a program of the person's own when something happens that they should hear of: a trip, an alarm, steadiness, the end.
 * The program is started as it is, with no shell between; what happened and the last readings are environment
 * variables. One runs at a time, none longer than its time; whatever it does, the run never waits for it.
 */
public final class Teller implements RunListener, AutoCloseable {
    /** How long a program may take. */
    public static final Duration LONGEST = Duration.ofSeconds(20);

    private static final int WAITING = 32;
    private static final Map<EventKind, String> TOLD = Map.of(
            EventKind.TRIP, "trip",
            EventKind.STOP, "trip",
            EventKind.ALARM, "alarm",
            EventKind.DRIFT, "alarm",
            EventKind.DISK, "alarm",
            EventKind.CLOCK, "alarm",
            EventKind.KEY, "key",
            EventKind.STEADY, "stability",
            EventKind.OFF, "end");

    private final Path program;
    private final Path session;
    private final Duration longest;
    private final Consumer<String> trouble;
    private final LastReadings last = new LastReadings();
    private final BlockingQueue<Map<String, String>> waiting = new ArrayBlockingQueue<>(WAITING);
    private final Thread thread;
    private volatile boolean closing;

    /**
     * @param program an executable file
     * @param session file of the session, handed to the program
     * @param trouble told in one line where the program cannot be run, takes too long or ends with an error
     */
    public Teller(Path program, Path session, Duration longest, Consumer<String> trouble) {
        this.program = program;
        this.session = session;
        this.longest = longest;
        this.trouble = trouble;
        this.thread = new Thread(this::work, "telling");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void swept(PollResult pollResult) {
        pollResult.readings().forEach(last::heard);
    }

    @Override
    public void heard(Reading reading) {
        last.heard(reading);
    }

    @Override
    public void happened(double atSeconds, SessionEvent event) {
        String what = event.what();
        String text = event.words();
        Optional.ofNullable(TOLD.get(event.kind()))
                .filter(kind -> !kind.equals("key") || text.startsWith("asked"))
                .ifPresent(kind -> {
                    Map<String, String> variables = new java.util.TreeMap<>();
                    variables.put("RAILWITNESS_KIND", kind);
                    variables.put("RAILWITNESS_WHAT", what);
                    variables.put("RAILWITNESS_TEXT", text);
                    variables.put("RAILWITNESS_AT_S", String.format(Locale.ROOT, "%.3f", atSeconds));
                    variables.put(
                            "RAILWITNESS_SESSION", session.toAbsolutePath().toString());
                    last.words().forEach((channel, value) -> variables.put("RAILWITNESS_" + variable(channel), value));
                    if (!waiting.offer(variables)) {
                        trouble.accept(program + ": too much to tell at once; " + what + " was not told");
                    }
                });
    }

    private static String variable(String channel) {
        return channel.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "_");
    }

    private void work() {
        while (!closing || !waiting.isEmpty()) {
            try {
                Map<String, String> next = waiting.poll(200, TimeUnit.MILLISECONDS);
                if (next != null) {
                    run(next);
                }
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private void run(Map<String, String> variables) throws InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(program.toAbsolutePath().toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectInput(ProcessBuilder.Redirect.from(nothing()));
        builder.environment().putAll(variables);
        try {
            Process process = builder.start();
            if (!process.waitFor(longest.toMillis(), TimeUnit.MILLISECONDS)) {
                process.descendants().forEach(ProcessHandle::destroyForcibly);
                process.destroyForcibly();
                trouble.accept(program + " took longer than " + longest.toSeconds() + " s and was ended");
            } else if (process.exitValue() != 0) {
                trouble.accept(program + " ended with " + process.exitValue());
            }
        } catch (IOException e) {
            trouble.accept(program + " cannot be run: " + e.getMessage());
        }
    }

    private static File nothing() {
        return new File(File.separatorChar == '\\' ? "NUL" : "/dev/null");
    }

    /** Waits for what is still to be told, but no longer than one program may take. */
    @Override
    public void close() {
        closing = true;
        try {
            thread.join(longest.toMillis() + 1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
