package railwitness.drivers.instrument;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import railwitness.drivers.scpi.ErrorEntry;
import railwitness.drivers.scpi.Fields;
import railwitness.drivers.scpi.Numeric;
import railwitness.drivers.scpi.SwitchState;

/**
 * Replies as no instrument should send them, made from those of the standard by cutting, doubling, exchanging and
 * inserting: each is understood or refused in words. What is taken as a number must be the one that its first digits say.
 * Arguments: replies (10 000 000 if left out), first seed. Ends with 1 when one was not.
 */
final class ReplyFuzz {
    private static final long LONGEST_NANOS = 5_000_000_000L;
    private static final List<String> REPLIES = List.of(
            "+3.65000000E+01",
            "36.5",
            "-0.001",
            "1",
            "0",
            "ON",
            "OFF",
            "9.9E37",
            "9.91E+37",
            "-9.9E37",
            "NAN",
            "INF",
            "+3.650E+01 V",
            "36.5V DC",
            "0,\"No error\"",
            "-113,\"Undefined header;READ?\"",
            "1,1,0",
            "36,5",
            "Maker,Model,123,1.0",
            "CONF:VOLT:DC 100",
            "#15hello",
            "CC",
            "CV",
            " 12.34 mV",
            "VOLT 13.80 CURR 1.2",
            "");

    /** Bytes that come of a wrong baud rate, of noise, of other ends of messages, and of other ways of writing numbers. */
    private static final String NOISE = "0123456789+-.,;:#\"' eExV\r\n\t\u0000\u00ff\u00b5\u00b0?*~|AnNiI";

    private final List<String> faults = new ArrayList<>();
    private long numbers;

    private ReplyFuzz() {}

    public static void main(String... arguments) {
        long count = arguments.length > 0 ? Long.parseLong(arguments[0]) : 10_000_000;
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        List<String> faults = run(count, first);
        faults.stream().limit(30).forEach(System.out::println);
        System.exit(faults.isEmpty() ? 0 : 1);
    }

    static List<String> run(long count, long first) {
        ReplyFuzz fuzz = new ReplyFuzz();
        for (long seed = first; seed < first + count; seed++) {
            fuzz.hear(seed, reply(new Random(seed)));
        }
        System.out.println(count + " replies from seed " + first + ", " + fuzz.numbers + " taken as numbers, faults "
                + fuzz.faults.size());
        return fuzz.faults;
    }

    private static String reply(Random random) {
        StringBuilder reply = new StringBuilder(REPLIES.get(random.nextInt(REPLIES.size())));
        for (int change = random.nextInt(4); change > 0; change--) {
            int at = random.nextInt(reply.length() + 1);
            switch (random.nextInt(5)) {
                case 0 -> reply.insert(at, NOISE.charAt(random.nextInt(NOISE.length())));
                case 1 -> reply.setLength(at);
                case 2 -> reply.delete(0, at);
                case 3 -> reply.append(REPLIES.get(random.nextInt(REPLIES.size())));
                default -> {
                    if (at < reply.length()) {
                        reply.setCharAt(at, (char) (reply.charAt(at) ^ 1 << random.nextInt(8)));
                    }
                }
            }
        }
        return reply.toString();
    }

    private void hear(long seed, String reply) {
        long began = System.nanoTime();
        refusedInWords(seed, reply, () -> number(seed, reply));
        refusedInWords(seed, reply, () -> ErrorEntry.of(reply));
        refusedInWords(seed, reply, () -> SwitchState.of(reply));
        refusedInWords(seed, reply, () -> Fields.split(reply, ','));
        refusedInWords(seed, reply, () -> Fields.split(reply, ';'));
        refusedInWords(seed, reply, () -> Identity.of(reply));
        if (System.nanoTime() - began > LONGEST_NANOS) {
            faults.add(seed + " took longer than 5 s: " + reply);
        }
    }

    /** What is taken must be the number with which the reply begins, as read here character by character. */
    private void number(long seed, String reply) {
        if (Numeric.of(reply) instanceof Numeric.Value taken) {
            numbers++;
            double own = begin(reply.strip());
            if (!(Math.abs(taken.value() - own) <= 1e-12 * Math.abs(own))) {
                faults.add(seed + " '" + reply + "' taken as " + taken.value());
            }
        }
    }

    /** NR1, NR2 or NR3 of IEEE 488.2 at the begin, spaces allowed before and in the exponent. */
    private static double begin(String text) {
        int at = 0;
        StringBuilder number = new StringBuilder();
        while (at < text.length() && "+-0123456789.".indexOf(text.charAt(at)) >= 0) {
            number.append(text.charAt(at++));
        }
        String rest = text.substring(at).replace(" ", "");
        if (!rest.isEmpty() && Character.toUpperCase(rest.charAt(0)) == 'E') {
            int end = 1;
            while (end < rest.length() && "+-0123456789".indexOf(rest.charAt(end)) >= 0) {
                end++;
            }
            if (end > 1 && Character.isDigit(rest.charAt(end - 1))) {
                number.append(rest, 0, end);
            }
        }
        return new BigDecimal(number.toString()).doubleValue();
    }

    private void refusedInWords(long seed, String reply, Runnable read) {
        try {
            read.run();
        } catch (IllegalArgumentException refused) {
            if (refused.getMessage() == null || refused.getMessage().isBlank()) {
                faults.add(seed + " refused without words: " + reply);
            }
        } catch (RuntimeException | StackOverflowError mistake) {
            faults.add(seed + " '" + reply + "': " + mistake);
        }
    }
}
