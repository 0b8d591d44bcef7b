package railwitness.safety.campaign;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.function.Consumer;
import railwitness.drivers.line.PseudoTerminal;

/** An instrument behind a pseudo-terminal that answers at once, so that only the program's own time is measured. */
final class QuickInstrument implements AutoCloseable {
    private final PseudoTerminal terminal = new PseudoTerminal();
    private final StringBuilder message = new StringBuilder();
    private final Consumer<Long> offHeard;
    private final Thread reader = new Thread(this::serve, "quick instrument");
    private volatile boolean ended;
    private volatile double reading;
    private volatile long answeredNanos;
    private volatile boolean on = true;

    /** @param offHeard is told when the first byte of an off came, ns of the system's clock */
    QuickInstrument(Consumer<Long> offHeard) {
        this.offHeard = offHeard;
        reader.setDaemon(true);
        reader.start();
    }

    String device() {
        return terminal.device();
    }

    void reads(double value) {
        reading = value;
    }

    void switchOn() {
        on = true;
    }

    /** When the last answer to a reading began to leave, ns of the system's clock. */
    long answeredNanos() {
        return answeredNanos;
    }

    private void serve() {
        while (!ended) {
            byte[] bytes = terminal.read(Duration.ofMillis(20));
            long now = System.nanoTime();
            for (byte b : bytes) {
                if (b != '\n') {
                    message.append((char) b);
                } else if (!message.isEmpty()) {
                    hear(message.toString(), now);
                    message.setLength(0);
                }
            }
        }
    }

    private void hear(String text, long now) {
        if (text.equals("OUTP OFF")) {
            on = false;
            offHeard.accept(now);
        } else if (text.endsWith("?")) {
            String answer = answer(text);
            answeredNanos = text.equals("READ?") ? System.nanoTime() : answeredNanos;
            terminal.write((answer + "\n").getBytes(StandardCharsets.US_ASCII));
        }
    }

    private String answer(String text) {
        return switch (text) {
            case "*IDN?" -> "Quay,Q1,0,0";
            case "SYST:ERR?" -> "0,\"No error\"";
            case "OUTP?" -> on ? "1" : "0";
            case "READ?" -> String.valueOf(reading);
            case "MEAS:VOLT?" -> "13.8";
            case "MEAS:CURR?", "*OPC?" -> "1";
            default -> text.startsWith("*ESE ") ? text.substring(5, text.indexOf(';')) : "0";
        };
    }

    @Override
    public void close() {
        ended = true;
        try {
            reader.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
