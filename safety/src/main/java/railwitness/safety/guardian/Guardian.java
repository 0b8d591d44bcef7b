package railwitness.safety.guardian;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.LongSupplier;

/**
 * The program's side of the guardian. Start it when the lines are open and before power; {@link #beat} from the scheduler,
 * several times within its patience, so that an scheduler that hangs stops the beats; ask {@link #isGuarding} before
 * anything that brings power; {@link #disarm} when the output is off and confirmed. Where the run ends otherwise, do
 * not disarm: the guardian then switches off once more.
 *
 * <p>A program that stood still for longer than the guardian's patience is not guarded any more, whatever it believes:
 * the first beat or question afterwards says so, for good.
 */
public final class Guardian {
    private static final Duration START = Duration.ofSeconds(10);

    /** How things stand. */
    public enum Standing {
        GUARDING("the guardian watches"),
        LATE("the program stood still; the guardian has switched off or is about to"),
        LOST("the guardian no longer answers"),
        DISARMED("the guardian was disarmed");

        private final String words;

        Standing(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    private final Process process;
    private final OutputStream beats;
    private final long patienceNanos;
    private final LongSupplier nanos;
    private volatile long lastEcho;
    private long lastBeat;
    private Standing standing = Standing.GUARDING;

    private Guardian(Process process, Duration patience, LongSupplier nanos) {
        this.process = process;
        this.beats = process.getOutputStream();
        this.patienceNanos = patience.toNanos();
        this.nanos = nanos;
    }

    /** Starts a guardian and waits until it holds its ports; throws {@link GuardianException} when it does not. */
    public static Guardian start(GuardianTask orders) {
        return start(orders, new Launch().command(), System::nanoTime);
    }

    static Guardian start(GuardianTask orders, java.util.List<String> command, LongSupplier nanos) {
        Process process = null;
        try {
            process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            Guardian guardian = new Guardian(process, orders.patience(), nanos);
            guardian.hand(orders);
            return guardian;
        } catch (IOException e) {
            if (process != null) {
                process.destroyForcibly();
            }
            throw new GuardianException("the guardian did not start, so there is no power: " + e.getMessage(), e);
        }
    }

    private void hand(GuardianTask orders) throws IOException {
        beats.write(orders.text().getBytes(StandardCharsets.US_ASCII));
        beats.flush();
        String first = firstLine();
        if (!first.equals("ready")) {
            throw new IOException(first.isEmpty() ? "it ended at once" : first);
        }
        lastBeat = nanos.getAsLong();
        lastEcho = lastBeat;
        Thread listener = new Thread(this::listen, "guardian's answers");
        listener.setDaemon(true);
        listener.start();
        beat();
    }

    private String firstLine() throws IOException {
        CompletableFuture<String> line = new CompletableFuture<>();
        Thread reader = new Thread(() -> line.complete(readLine(process.getInputStream())), "guardian's start");
        reader.setDaemon(true);
        reader.start();
        try {
            return line.get(START.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException | ExecutionException e) {
            throw new IOException("it was not ready within " + START.toSeconds() + " s", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while it started", e);
        }
    }

    private static String readLine(InputStream in) {
        StringBuilder line = new StringBuilder();
        try {
            for (int next = in.read(); next >= 0 && next != '\n'; next = in.read()) {
                line.append((char) next);
            }
        } catch (IOException gone) {
            return "";
        }
        return line.toString();
    }

    private void listen() {
        byte[] some = new byte[64];
        try {
            while (process.getInputStream().read(some) >= 0) {
                lastEcho = nanos.getAsLong();
            }
        } catch (IOException gone) {
            // isGuarding sees that no echo comes any more
        }
    }

    /** Shows that the program runs. Returns at once; says how things stand. */
    public synchronized Standing beat() {
        judge();
        if (standing == Standing.GUARDING) {
            try {
                lastBeat = nanos.getAsLong();
                beats.write(HeartbeatMonitor.BEAT);
                beats.flush();
            } catch (IOException gone) {
                standing = Standing.LOST;
            }
        }
        return standing;
    }

    /** How things stand; LATE and LOST are for good. */
    public synchronized Standing standing() {
        judge();
        return standing;
    }

    /** True when the guardian watches and this program's last beat is recent. */
    public boolean isGuarding() {
        return standing() == Standing.GUARDING;
    }

    private void judge() {
        if (standing != Standing.GUARDING) {
            return;
        }
        long now = nanos.getAsLong();
        if (now - lastBeat > patienceNanos) {
            standing = Standing.LATE;
        } else if (!process.isAlive() || now - lastEcho > 2 * patienceNanos) {
            standing = Standing.LOST;
        }
    }

    /**
     * Tells the guardian to do nothing and end; only when the output is off and confirmed.
     *
     * @return true when it ended without firing, within 2 s
     */
    public synchronized boolean disarm() {
        try {
            beats.write(HeartbeatMonitor.DISARM);
            beats.close();
            standing = Standing.DISARMED;
            return process.waitFor(2, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException gone) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Stops the beats and lets the guardian switch off: where the program itself can no longer reach the supply. */
    public synchronized void letFire() {
        try {
            standing = Standing.LATE;
            beats.close();
        } catch (IOException gone) {
            // it is gone or has fired
        }
    }
}
