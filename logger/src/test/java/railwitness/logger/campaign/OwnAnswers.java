package railwitness.logger.campaign;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import railwitness.drivers.bench.BenchSheet;
import railwitness.drivers.bench.Duty;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Measured;
import railwitness.drivers.rehearsal.VirtualBench;

/**
 * What each instrument of the far end itself answered, and when: a reading is foreign when its number is not in an
 * answer that its own instrument gave to its own question between asking and reply. A meter that is asked nothing but its
 * one question cannot show that it answers one question late: what it answered to the asking before is old, not foreign.
 */
final class OwnAnswers {
    private static final int REMEMBERED = 200;
    private static final int LONGEST = 400;
    private static final double LAST_DIGIT = 1e-9;

    /** By how often it is asked at the end of a question a reply is told from the one before; it is no part of what was asked. */
    private static final Pattern ROUND_MARKS = Pattern.compile("(;\\*ESE\\?)+$");

    private final Map<String, Deque<Answer>> byInstrument = new HashMap<>();
    private final Map<Channel, String> instruments = new HashMap<>();
    private final Map<Channel, Double> perUnit = new HashMap<>();
    private final Map<Channel, Set<String>> questions = new HashMap<>();
    private final Map<Channel, Long> askedBefore = new HashMap<>();
    private final List<String> foreign = new ArrayList<>();
    private long old;
    private long checked;

    private record Answer(String question, List<Double> numbers, long atNanos) {}

    OwnAnswers(VirtualBench far, BenchSheet bench) {
        bench.instruments().forEach(sheet -> {
            double ohms =
                    sheet.duty() instanceof Duty.AsMeter meter ? meter.setting().perUnit() : 1;
            sheet.reads().forEach(channel -> {
                instruments.put(channel, sheet.name());
                perUnit.put(channel, ohms);
            });
            Deque<Answer> answers = new ArrayDeque<>();
            byInstrument.put(sheet.name(), answers);
            far.instrument(sheet.name()).overheardBy((question, answer, at) -> {
                if (answer.length < LONGEST) {
                    note(answers, new Answer(asked(question), numbers(answer), at));
                }
            });
        });
    }

    private synchronized void note(Deque<Answer> answers, Answer answer) {
        answers.add(answer);
        if (answers.size() > REMEMBERED) {
            answers.remove();
        }
    }

    private static String asked(String question) {
        return ROUND_MARKS.matcher(question).replaceFirst("");
    }

    private static List<Double> numbers(byte[] answer) {
        List<Double> found = new ArrayList<>();
        for (String part : new String(answer, StandardCharsets.ISO_8859_1).split("[;,]")) {
            try {
                found.add(Double.parseDouble(part.strip()));
            } catch (NumberFormatException word) {
                continue;
            }
        }
        return found;
    }

    /** @param sound before anything went wrong: the questions a channel is asked by are learnt then */
    synchronized void check(Measured reading, boolean sound) {
        String instrument = instruments.get(reading.channel());
        if (instrument == null) {
            return;
        }
        checked++;
        Set<String> own = questions.computeIfAbsent(reading.channel(), channel -> new HashSet<>());
        long before = askedBefore.getOrDefault(reading.channel(), reading.requestedNanos());
        askedBefore.put(reading.channel(), reading.requestedNanos());
        Optional<Answer> given = byInstrument.get(instrument).stream()
                .filter(answer -> answer.atNanos() >= before && answer.atNanos() <= reading.repliedNanos())
                .filter(answer -> sound || own.isEmpty() || own.contains(answer.question()))
                .filter(answer -> answer.numbers().stream().anyMatch(number -> isSame(number, reading)))
                .reduce((first, last) -> last);
        given.ifPresentOrElse(
                answer -> {
                    own.add(answer.question());
                    old += answer.atNanos() < reading.requestedNanos() ? 1 : 0;
                },
                () -> foreign.add("foreign reading: " + reading.channel() + " " + reading.value()));
    }

    /** The same number, or the volts of a shunt divided by its ohms, whatever sign the leads give it. */
    private boolean isSame(double number, Measured reading) {
        double wanted = Math.abs(reading.value()) * perUnit.get(reading.channel());
        return Math.abs(Math.abs(number) - wanted) <= LAST_DIGIT * wanted;
    }

    /** Every reading that belongs to no answer of its own, in words. */
    synchronized List<String> foreign() {
        return List.copyOf(foreign);
    }

    /** How many belong to the asking before. */
    synchronized long old() {
        return old;
    }

    /** How many readings were looked at. */
    synchronized long checked() {
        return checked;
    }
}
