package railwitness.drivers.bench;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import railwitness.drivers.line.LineException;
import railwitness.drivers.line.PseudoTerminal;

/** A meter on a pseudo-terminal with the oddities of real ones: its ends of messages, its slowness, its echo. */
final class OddInstrument implements AutoCloseable {
    private final PseudoTerminal terminal = new PseudoTerminal();
    private final Thread worker = new Thread(this::serve, "odd instrument");
    private final Function<String, String> answers;
    private String end = "\n";
    private long byteMillis;
    private long identityMillis;
    private boolean echoes;
    private volatile boolean ended;

    OddInstrument(Function<String, String> answers) {
        this.answers = answers;
    }

    /** Knows its identity and one reading. */
    static OddInstrument meter() {
        return new OddInstrument(message -> switch (message) {
            case "*IDN?" -> "Copperyard,DM-9,4,2.0";
            case "READ?" -> "+3.65000E+01";
            default -> null;
        });
    }

    OddInstrument ending(String replies) {
        end = replies;
        return this;
    }

    OddInstrument bytesApart(long millis) {
        byteMillis = millis;
        return this;
    }

    OddInstrument waking(long millis) {
        identityMillis = millis;
        return this;
    }

    OddInstrument echoing() {
        echoes = true;
        return this;
    }

    OddInstrument on() {
        worker.setDaemon(true);
        worker.start();
        return this;
    }

    String device() {
        return terminal.device();
    }

    private void serve() {
        ByteArrayOutputStream message = new ByteArrayOutputStream();
        try {
            while (!ended) {
                for (byte b : terminal.read(Duration.ofMillis(20))) {
                    if (b != '\n' && b != '\r') {
                        message.write(b);
                    } else if (message.size() > 0) {
                        hear(message.toString(StandardCharsets.ISO_8859_1));
                        message.reset();
                    }
                }
            }
        } catch (InterruptedException | IllegalStateException | LineException over) {
            ended = true;
        }
    }

    private void hear(String message) throws InterruptedException {
        if (echoes) {
            say(message);
        }
        if (message.equals("*IDN?")) {
            TimeUnit.MILLISECONDS.sleep(identityMillis);
        }
        String reply = answers.apply(message);
        if (reply != null) {
            say(reply);
        }
    }

    private void say(String text) throws InterruptedException {
        byte[] bytes = (text + end).getBytes(StandardCharsets.ISO_8859_1);
        if (byteMillis == 0) {
            terminal.write(bytes);
            return;
        }
        for (byte b : bytes) {
            terminal.write(new byte[] {b});
            TimeUnit.MILLISECONDS.sleep(byteMillis);
        }
    }

    @Override
    public void close() {
        ended = true;
        worker.interrupt();
        try {
            worker.join(2000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
