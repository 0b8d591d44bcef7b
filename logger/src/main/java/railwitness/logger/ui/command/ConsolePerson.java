package railwitness.logger.ui.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.bench.HandRead;
import railwitness.drivers.instrument.KnobTurn;
import railwitness.drivers.time.Scheduler;
import railwitness.logger.recording.record.Person;
import railwitness.logger.text.TypedNumber;

/**
 * The person at the keyboard. Prompts are answered one after the other; the run goes on meanwhile. A keyboard that can be
 * a terminal is read only while something is asked; anything else is read ahead, so that its end is known at once: who
 * typed has gone.
 */
final class ConsolePerson implements Person {
    private static final String OPEN = "open";
    private static final String OFF = "off";
    private static final String LARGE = """

            ##################################################################
            ##                                                              ##
            ##    SWITCH THE SUPPLY'S OUTPUT OFF BY HAND NOW                ##
            ##    or open the disconnect                                    ##
            ##                                                              ##
            ##################################################################
            """;

    private static final int BELL = 7;
    private static final int LINES_AHEAD = 100;
    private static final Duration HANG_UP = Duration.ofMillis(500);
    private static final Duration ANEW = Duration.ofSeconds(1);

    private record Prompt(String sentence, Consumer<String> answer) {}

    private final Scheduler scheduler;
    private final PrintWriter out;
    private final BufferedReader keyboard;
    private final boolean ahead;
    private final Deque<Prompt> prompts = new ArrayDeque<>();
    private Runnable bell = () -> {};
    private final Deque<String> typed = new ArrayDeque<>();
    private final Semaphore wanted;
    private Consumer<Boolean> gone = asked -> {};
    private Prompt shown;
    private int round;
    private boolean ended;

    /** @param terminal false where the input is a pipe or a file */
    ConsolePerson(Scheduler scheduler, PrintWriter out, InputStream in, boolean terminal) {
        this.scheduler = scheduler;
        this.out = out;
        this.ahead = !terminal;
        this.wanted = new Semaphore(ahead ? LINES_AHEAD : 0);
        this.keyboard = new BufferedReader(new InputStreamReader(in, Charset.defaultCharset()));
        Thread thread = new Thread(this::read, "keyboard");
        thread.setDaemon(true);
        thread.start();
    }

    /** @param told on the scheduler when the input has ended, and at each prompt after that: true where something is asked */
    void whenGone(Consumer<Boolean> told) {
        gone = told;
    }

    /** @param ring makes the terminal ring, past the writer, which shows control characters instead of sending them */
    void rungBy(Runnable ring) {
        bell = ring;
    }

    /** Whether lines were typed that wait for a question. */
    boolean hasAnswers() {
        return !typed.isEmpty();
    }

    @Override
    public void act(String sentence, Runnable done) {
        ask(new Prompt(sentence + ", then press Enter.", line -> done.run()));
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        read(sentence, "", value);
    }

    @Override
    public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        if (ohms == 0) {
            Person.super.switchLoad(rail, ohms, switched);
            return;
        }
        String sentence = Person.loadSentence(rail, ohms)
                + ", then press Enter; if it is another one, type its resistance in ohm first: ";
        ask(new Prompt(sentence, line -> {
            double taken = line.isBlank() ? ohms : number(line, "ohm").orElse(0);
            if (taken > 0) {
                switched.accept(taken);
            } else {
                switchLoad(rail, ohms, switched);
            }
        }));
    }

    @Override
    public void disconnect(String sentence, Runnable open) {
        int mine = round;
        ask(new Prompt(sentence + ". Once it is open, type the word " + OPEN + " and press Enter.", line -> {
            if (line.strip().equalsIgnoreCase(OPEN)) {
                open.run();
            } else {
                scheduler.after(ANEW, () -> {
                    if (mine == round) {
                        disconnect(sentence, open);
                    }
                });
            }
        }));
    }

    @Override
    public void turn(KnobTurn turn, Consumer<OptionalDouble> shown) {
        read(Person.turnSentence(turn), turn.kind().unit(), shown);
    }

    @Override
    public void switchOff(String sentence, Runnable isOff) {
        int mine = round;
        ask(new Prompt(
                sentence + ". Once it is off, type the word " + OFF + " and press Enter (" + OPEN
                        + " where you opened the disconnect).",
                line -> {
                    String word = line.strip();
                    if (word.equalsIgnoreCase(OFF) || word.equalsIgnoreCase(OPEN)) {
                        isOff.run();
                    } else {
                        scheduler.after(ANEW, () -> {
                            if (mine == round) {
                                switchOff(sentence, isOff);
                            }
                        });
                    }
                }));
    }

    @Override
    public void offNow() {
        out.println(LARGE);
        out.flush();
        bell.run();
    }

    @Override
    public void forget() {
        round++;
        prompts.clear();
    }

    @Override
    public void read(HandRead meter, Consumer<OptionalDouble> value) {
        read(
                Person.readSentence(meter),
                meter.function().unit(),
                shown -> value.accept(Person.ofChannel(meter, shown)));
    }

    @Override
    public void readAgain(HandRead meter, String doubt, Consumer<OptionalDouble> value) {
        read(
                doubt + ". " + Person.readSentence(meter),
                meter.function().unit(),
                shown -> value.accept(Person.ofChannel(meter, shown)));
    }

    private void read(String sentence, String unit, Consumer<OptionalDouble> value) {
        ask(new Prompt(sentence + " (a number, or only Enter for none): ", line -> {
            OptionalDouble number = number(line, unit);
            if (number.isEmpty() && !line.isBlank()) {
                read(
                        "'" + line.strip() + "' is not a number" + (unit.isEmpty() ? "" : " in " + unit) + ". "
                                + sentence,
                        unit,
                        value);
            } else {
                value.accept(number);
            }
        }));
    }

    private static OptionalDouble number(String line, String unit) {
        return TypedNumber.of(line, unit).stream()
                .mapToDouble(TypedNumber::value)
                .findFirst();
    }

    private void ask(Prompt prompt) {
        prompts.addLast(prompt);
        goOn();
    }

    /** Puts the first prompt and answers it where a line is there, and so on. */
    private void goOn() {
        while (!prompts.isEmpty()) {
            show(prompts.peekFirst());
            if (typed.isEmpty()) {
                if (ended) {
                    scheduler.post(() -> gone.accept(true));
                }
                return;
            }
            wanted.release(ahead ? 1 : 0);
            prompts.removeFirst().answer().accept(typed.removeFirst());
        }
    }

    private void show(Prompt prompt) {
        if (prompt != shown) {
            shown = prompt;
            out.println(">> " + prompt.sentence());
            out.flush();
            wanted.release(ahead ? 0 : 1);
        }
    }

    private void heard(String line) {
        typed.addLast(line);
        goOn();
    }

    private void ended() {
        ended = true;
        gone.accept(!prompts.isEmpty());
    }

    private void read() {
        try {
            wanted.acquire();
            for (String line = keyboard.readLine(); line != null; line = keyboard.readLine()) {
                String mine = line;
                scheduler.post(() -> heard(mine));
                wanted.acquire();
            }
        } catch (InterruptedException | IOException e) {
            // as good as the end of the input
        }
        // a terminal that was closed also ends the program, under its own name
        scheduler.after(ahead ? Duration.ZERO : HANG_UP, this::ended);
    }

    /** The bell of the terminal, where there is one. */
    static void ring() {
        if (atTerminal()) {
            System.err.write(BELL);
            System.err.flush();
        }
    }

    /** True where what is typed comes from a terminal, as far as the system tells. */
    static boolean atTerminal() {
        try {
            String device = Path.of("/dev/fd/0").toRealPath().toString();
            return System.console() != null || device.startsWith("/dev/pts/") || device.startsWith("/dev/tty");
        } catch (IOException | InvalidPathException e) {
            return System.console() != null;
        }
    }
}
