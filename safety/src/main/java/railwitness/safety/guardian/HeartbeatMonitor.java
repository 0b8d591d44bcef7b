package railwitness.safety.guardian;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

/** Waits for beats and says how the waiting ended. */
final class HeartbeatMonitor {
    static final int BEAT = 'b';
    static final int DISARM = 'd';

    enum End {
        DISARMED,
        END_OF_FILE,
        MISSED_BEAT
    }

    private final Duration patience;
    private final OutputStream echo;
    private long lastBeat = System.nanoTime();
    private End end;

    HeartbeatMonitor(Duration patience, OutputStream echo) {
        this.patience = patience;
        this.echo = echo;
    }

    End keep(InputStream in) {
        Thread listener = new Thread(() -> listen(in), "beats");
        listener.setDaemon(true);
        listener.start();
        return await();
    }

    private synchronized End await() {
        while (end == null) {
            long left = patience.toNanos() - (System.nanoTime() - lastBeat);
            if (left <= 0) {
                end = End.MISSED_BEAT;
                break;
            }
            try {
                TimeUnit.NANOSECONDS.timedWait(this, left + 1_000_000);
            } catch (InterruptedException e) {
                end = End.MISSED_BEAT;
            }
        }
        return end;
    }

    private void listen(InputStream in) {
        byte[] some = new byte[64];
        try {
            for (int count = in.read(some); count >= 0; count = in.read(some)) {
                heard(some, count);
            }
        } catch (IOException broken) {
            // as good as the end of the file
        }
        over(End.END_OF_FILE);
    }

    private void heard(byte[] some, int count) throws IOException {
        for (int i = 0; i < count; i++) {
            if (some[i] == DISARM) {
                over(End.DISARMED);
                return;
            }
        }
        synchronized (this) {
            lastBeat = System.nanoTime();
        }
        echo.write(BEAT);
        echo.flush();
    }

    private synchronized void over(End how) {
        if (end == null) {
            end = how;
            notifyAll();
        }
    }
}
