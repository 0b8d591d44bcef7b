package railwitness.logger.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.OptionalDouble;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import railwitness.drivers.time.Agenda;
import railwitness.logger.record.Person;

/** The person at the keyboard. Prompts are answered one after the other; the run goes on meanwhile. */
final class ConsolePerson implements Person {
    private record Prompt(String sentence, Consumer<String> answer) {}

    private final Agenda agenda;
    private final PrintWriter out;
    private final BufferedReader keyboard;
    private final LinkedBlockingQueue<Prompt> prompts = new LinkedBlockingQueue<>();

    ConsolePerson(Agenda agenda, PrintWriter out, InputStream in) {
        this.agenda = agenda;
        this.out = out;
        this.keyboard = new BufferedReader(new InputStreamReader(in, Charset.defaultCharset()));
        Thread thread = new Thread(this::answer, "keyboard");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void act(String sentence, Runnable done) {
        prompts.add(new Prompt(sentence + ", then press Enter.", line -> done.run()));
    }

    @Override
    public void read(String sentence, Consumer<OptionalDouble> value) {
        prompts.add(new Prompt(sentence + " (a number, or only Enter for none): ", line -> {
            OptionalDouble number = number(line);
            if (number.isEmpty() && !line.isBlank()) {
                read("'" + line.strip() + "' is not a number. " + sentence, value);
            } else {
                value.accept(number);
            }
        }));
    }

    @Override
    public void switchLoad(String rail, double ohms, DoubleConsumer switched) {
        if (ohms == 0) {
            Person.super.switchLoad(rail, ohms, switched);
            return;
        }
        String sentence = Person.loadSentence(rail, ohms)
                + ", then press Enter; if it is another one, type its resistance in ohm first: ";
        prompts.add(new Prompt(sentence, line -> {
            double taken = line.isBlank() ? ohms : number(line).orElse(0);
            if (taken > 0) {
                switched.accept(taken);
            } else {
                switchLoad(rail, ohms, switched);
            }
        }));
    }

    private static OptionalDouble number(String line) {
        try {
            double value = Double.parseDouble(line.strip().replace(',', '.'));
            return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }

    private void answer() {
        try {
            while (true) {
                Prompt prompt = prompts.take();
                out.println(">> " + prompt.sentence());
                out.flush();
                String line = keyboard.readLine();
                if (line == null) {
                    return;
                }
                agenda.post(() -> prompt.answer().accept(line));
            }
        } catch (InterruptedException | IOException e) {
            Thread.currentThread().interrupt();
        }
    }
}
