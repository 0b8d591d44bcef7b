package railwitness.safety.guardian;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import railwitness.drivers.scpi.SwitchState;

/**
 * Off, in the order that is safe: every supply is told off, then asked and told again until it says so; the loads stay
 * on meanwhile and drain the rails, then they go off. All within {@link #LONGEST_MILLIS}.
 */
final class EmergencyOff {
    static final long LONGEST_MILLIS = 900;

    private static final Optional<SwitchState> OFF = Optional.of(SwitchState.OFF);
    private static final long ASKING_MILLIS = 500;
    private static final long DRAINING_MILLIS = 350;
    private static final long LEAVING_MILLIS = 100;
    private static final long LOOK_MILLIS = 5;
    private static final long ANSWER_MILLIS = 120;

    private final GuardianTask orders;
    private final Map<String, BytePort> ways;
    private final Map<GuardianTask.Supply, StringBuilder> answers = new LinkedHashMap<>();

    private final boolean patient;

    /** @param patient false for a rehearsal, in which nothing drains or leaves */
    EmergencyOff(GuardianTask orders, Map<String, BytePort> ways, boolean patient) {
        this.orders = orders;
        this.ways = ways;
        this.patient = patient;
    }

    /** True when every supply said that it is off. */
    boolean fire() {
        long start = System.nanoTime();
        orders.supplies().forEach(supply -> write(supply.port(), supply.off()));
        boolean off = false;
        while (!off && millisSince(start) < ASKING_MILLIS) {
            orders.supplies().forEach(this::askAgain);
            off = awaitAnswers();
        }
        sleep(patient ? DRAINING_MILLIS - millisSince(start) : 0);
        orders.loads().forEach(load -> write(load.port(), load.off()));
        sleep(patient ? LEAVING_MILLIS : 0);
        return off;
    }

    private void askAgain(GuardianTask.Supply supply) {
        StringBuilder known = answers.get(supply);
        if (known != null && saysOff(known)) {
            return;
        }
        if (known != null) {
            write(supply.port(), supply.off());
        }
        answers.put(supply, new StringBuilder());
        hear(supply.port());
        write(supply.port(), supply.ask());
    }

    private boolean awaitAnswers() {
        long start = System.nanoTime();
        while (millisSince(start) < ANSWER_MILLIS) {
            answers.forEach((supply, heard) -> heard.append(hear(supply.port())));
            if (answers.values().stream().allMatch(EmergencyOff::saysOff)) {
                return true;
            }
            sleep(LOOK_MILLIS);
        }
        return false;
    }

    /** The last whole line says off, in the same words as for the program; earlier ones may be answers to questions of the program that died. */
    private static boolean saysOff(CharSequence heard) {
        String text = heard.toString();
        List<String> lines = text.strip()
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .toList();
        boolean whole = text.endsWith("\n") || text.endsWith("\r");
        return whole
                && !lines.isEmpty()
                && SwitchState.of(lines.get(lines.size() - 1)).equals(OFF);
    }

    private String hear(String port) {
        BytePort way = ways.get(port);
        return way == null ? "" : new String(way.read(), StandardCharsets.ISO_8859_1);
    }

    private void write(String port, byte[] bytes) {
        try {
            BytePort way = ways.get(port);
            if (way != null) {
                way.write(bytes);
            }
        } catch (IOException gone) {
            // nobody is left to be told; the other ports still get theirs
        }
    }

    private static long millisSince(long startNanos) {
        return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - startNanos);
    }

    private static void sleep(long millis) {
        try {
            TimeUnit.MILLISECONDS.sleep(Math.max(0, millis));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
