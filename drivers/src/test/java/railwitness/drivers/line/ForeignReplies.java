package railwitness.drivers.line;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;

/**
 * The law of the wire: under delays, losses, doublings and splits no reply is ever taken for that of another question. Each
 * question bears its own number, which its reply repeats, so that a foreign reply is seen at once. As a command it asks as
 * often as it is told: {@code ForeignReplies 100000 [SEED [LINES]]}, first of an instrument that knows IEEE 488.2, then of one
 * that knows its identity and its readings alone; over so many lines side by side, each with a seed of its own.
 */
final class ForeignReplies {
    private static final Duration PATIENCE = Duration.ofMillis(25);
    private static final int LINES = 8;
    private static final String IDENTITY = "Staithe Works,L2,77,1.3";

    /** What came of so many questions. */
    record Count(int asked, int own, int foreign, int none, int thrownAway, String troubles) {
        Count and(Count other) {
            return new Count(
                    asked + other.asked,
                    own + other.own,
                    foreign + other.foreign,
                    none + other.none,
                    thrownAway + other.thrownAway,
                    troubles + "; " + other.troubles);
        }
    }

    private ForeignReplies() {}

    public static void main(String[] arguments) {
        int questions = Integer.parseInt(arguments[0]);
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : System.nanoTime();
        int lines = arguments.length > 2 ? Integer.parseInt(arguments[2]) : LINES;
        System.out.println("seed " + seed + ", lines " + lines);
        System.out.println("IEEE 488.2: " + sideBySide(questions, seed, lines, ForeignReplies::of488));
        System.out.println("bare:       " + sideBySide(questions, seed, lines, ForeignReplies::ofBare));
    }

    /** So many questions in all, as many over each line; the lines have seeds one after the other. */
    static Count sideBySide(int questions, long seed, int lines, BiFunction<Integer, Long, Count> kind) {
        List<CompletableFuture<Count>> counts = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(lines);
        try {
            for (int i = 0; i < lines; i++) {
                long own = seed + i;
                counts.add(CompletableFuture.supplyAsync(() -> kind.apply(questions / lines, own), pool));
            }
            return counts.stream()
                    .map(CompletableFuture::join)
                    .reduce(Count::and)
                    .orElseThrow();
        } finally {
            pool.shutdownNow();
        }
    }

    /** An instrument that keeps an event enable register and answers several questions in one message. */
    static Count of488(int questions, long seed) {
        AtomicInteger register = new AtomicInteger();
        return asked(questions, seed, message -> reply(message, register));
    }

    /** What such an instrument says to one message; null for nothing. */
    static String reply(String message, AtomicInteger register) {
        StringBuilder reply = new StringBuilder();
        for (String part : message.split(";")) {
            String said = one(part, register);
            if (said != null) {
                reply.append(reply.length() == 0 ? "" : ";").append(said);
            }
        }
        return reply.length() == 0 ? null : reply.toString();
    }

    /** An instrument that knows one question a message, and of the common ones its identity alone. */
    static Count ofBare(int questions, long seed) {
        return asked(questions, seed, message -> message.startsWith("*ES") ? null : one(message, new AtomicInteger()));
    }

    private static String one(String part, AtomicInteger register) {
        if (part.startsWith("*ESE ")) {
            register.set(Integer.parseInt(part.substring(5)));
            return null;
        }
        return switch (part) {
            case "*ESE?" -> Integer.toString(register.get());
            case "*IDN?" -> IDENTITY;
            default -> part.startsWith("MEAS") ? "+" + part.replaceAll("[^0-9]", "") + ".25E+00" : null;
        };
    }

    private static Count asked(int questions, long seed, java.util.function.UnaryOperator<String> mind) {
        int own = 0;
        int foreign = 0;
        int none = 0;
        int thrownAway = 0;
        try (Unruly far = new Unruly(seed, 0.01, mind);
                SerialLine line = SerialLine.open(PortSettings.usual(far.device()))) {
            line.getToKnow(line.ask("*IDN?", Duration.ofSeconds(2)), Duration.ofSeconds(1));
            far.begin();
            for (int i = 0; i < questions; i++) {
                try {
                    boolean mine = line.ask("MEAS:VOLT" + i + "?", PATIENCE).equals("+" + i + ".25E+00");
                    own += mine ? 1 : 0;
                    foreign += mine ? 0 : 1;
                } catch (LineException nothing) {
                    none++;
                }
                thrownAway += line.thrownAway().size();
            }
            return new Count(questions, own, foreign, none, thrownAway, far.toString());
        }
    }
}
