package railwitness.logger.ui.command;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;
import java.util.function.DoubleSupplier;
import railwitness.drivers.line.PseudoTerminal;

/**
 * A plain instrument on a pseudo-terminal, written by hand from IEEE 488.2 and SCPI-1999 (from memory). It knows its
 * identity and a few headers, takes one of them in each message, and says nothing to all others: it has no error queue, no
 * state registers, no protections, and does not know {@code *RST}, {@code *OPC?} or {@code *ESE}.
 */
final class SixWords implements AutoCloseable {
    private final PseudoTerminal terminal = new PseudoTerminal();
    private final Map<String, DoubleSupplier> questions = new TreeMap<>();
    private final Map<String, DoubleConsumer> settings = new TreeMap<>();
    private final String identity;
    private final Thread worker;
    private volatile boolean ended;

    private SixWords(String model) {
        identity = "Lockside," + model + ",11,0.9";
        worker = new Thread(this::serve, "plain " + model);
        worker.setDaemon(true);
    }

    /** Sets in steps of 0.1 V, as many small supplies do. */
    static SixWords supply(PlainUnit unit) {
        SixWords supply = new SixWords("PS-30");
        supply.settings.put("VOLT", volts -> unit.volts = Math.round(volts * 10) / 10.0);
        supply.settings.put("CURR", amps -> unit.limit = amps);
        supply.settings.put("OUTP", on -> unit.output(on > 0));
        supply.questions.put("VOLT?", () -> unit.volts);
        supply.questions.put("CURR?", () -> unit.limit);
        supply.questions.put("OUTP?", () -> unit.on() ? 1 : 0);
        supply.questions.put("MEAS:VOLT?", unit::inputVolts);
        supply.questions.put("MEAS:CURR?", unit::inputAmps);
        return supply.begun();
    }

    static SixWords load(PlainUnit unit, String rail) {
        SixWords load = new SixWords("EL-" + rail);
        double[] amps = {0};
        boolean[] on = {false};
        Runnable draw = () -> unit.load(rail, on[0] ? amps[0] : 0);
        load.settings.put("CURR", wanted -> {
            amps[0] = wanted;
            draw.run();
        });
        load.settings.put("OUTP", wanted -> {
            on[0] = wanted > 0;
            draw.run();
        });
        load.questions.put("CURR?", () -> amps[0]);
        load.questions.put("OUTP?", () -> on[0] ? 1 : 0);
        load.questions.put("MEAS:CURR?", () -> unit.drawn(rail));
        return load.begun();
    }

    static SixWords meter(DoubleSupplier value) {
        SixWords meter = new SixWords("DM-4");
        meter.questions.put("READ?", value);
        return meter.begun();
    }

    private SixWords begun() {
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
                    if (b == '\n') {
                        obey(message.toString(StandardCharsets.US_ASCII).strip());
                        message.reset();
                    } else {
                        message.write(b);
                    }
                }
            }
        } catch (IllegalStateException closed) {
            ended = true;
        }
    }

    private void obey(String message) {
        if (message.equals("*IDN?")) {
            say(identity);
        } else if (questions.containsKey(message)) {
            double value = questions.get(message).getAsDouble();
            say(message.equals("OUTP?") ? Integer.toString((int) value) : String.format(Locale.ROOT, "%.5E", value));
        } else {
            String[] words = message.split(" ", 2);
            if (words.length == 2 && settings.containsKey(words[0])) {
                settings.get(words[0]).accept(number(words[1]));
            }
        }
    }

    private static double number(String word) {
        return switch (word) {
            case "ON" -> 1;
            case "OFF" -> 0;
            default -> Double.parseDouble(word);
        };
    }

    private void say(String reply) {
        terminal.write((reply + "\n").getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public void close() {
        ended = true;
        try {
            worker.join(1000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        terminal.close();
    }
}
