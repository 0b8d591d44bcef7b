package railwitness.logger.reporting.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import railwitness.analysis.contradiction.Contradiction;
import railwitness.analysis.verdict.Fitness;
import railwitness.drivers.converter.Fault;
import railwitness.drivers.converter.Specimen;
import railwitness.logger.recording.rehearsal.FixtureMaker;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionState;

/**
 * Are sound benches believed and impossible readings not? Whole sessions on virtual benches whose instruments, leads and
 * units differ from one to the next; each is then read again with something wrong with it.
 *
 * <p>Arguments: benches (50), seed (13). The command stands in {@code analysis/README.md}.
 */
public final class ForgeryStudy {
    private static final Pattern PERCENT = Pattern.compile("(reading_pct|range_pct|offset) = ([0-9.]+)");
    private static final Pattern LOAD =
            Pattern.compile("\\[\\[instrument]]\\s+name = \"plus load\".*?(?=\\[\\[instrument]])", Pattern.DOTALL);
    private static final List<String> FAULTS = List.of(
            "shorted-turn",
            "weak-half",
            "dead-rectifier",
            "tired-capacitor",
            "lead-resistance",
            "leaky-switch",
            "weak-core");

    private final Path folder;
    private final Random random;
    final Map<String, List<String>> accused = new LinkedHashMap<>();
    final List<String> ended = new ArrayList<>();
    final List<String> missed = new ArrayList<>();
    final Map<String, Integer> found = new LinkedHashMap<>();

    ForgeryStudy(Path folder, long seed) {
        this.folder = folder;
        this.random = new Random(seed);
    }

    /** One bench, sound and with each forgery. */
    void bench(int number) throws IOException {
        Sheets sheets = sheets();
        boolean faulty = number % 2 == 1;
        List<Fault> faults = faulty ? List.of(Fault.of(FAULTS.get(number / 2 % FAULTS.size()))) : List.of();
        Specimen unit = UnitDraw.of(FixtureMaker.specimen(sheets), random);
        Path session = folder.resolve(number + ".session");
        Rehearsed.session(session, sheets, unit, faults, random.nextLong());
        SessionFindings sound = judged(session);
        if (!sound.findings().contradictions().isEmpty()) {
            accused.put(number + " " + faults, texts(sound.findings().contradictions()));
        }
        if (sound.state() != SessionState.COMPLETE) {
            ended.add(number + " " + faults + ": " + sound.state().word());
        } else if (!faulty) {
            for (Forgery forgery : Forgery.all(random)) {
                forged(session, forgery, number);
            }
            believed(session, number);
        }
        Files.delete(session);
    }

    /** A bench whose plus load is a bank of resistors, sound and with another resistor typed than is switched in. */
    void resistors(int number) throws IOException {
        Sheets sheets = withBank(sheets());
        Path session = folder.resolve(number + "-bank.session");
        Rehearsed.session(
                session, sheets, UnitDraw.of(FixtureMaker.specimen(sheets), random), List.of(), random.nextLong());
        SessionFindings sound = judged(session);
        if (!sound.findings().contradictions().isEmpty()) {
            accused.put(number + " with resistors", texts(sound.findings().contradictions()));
        }
        if (sound.state() != SessionState.COMPLETE) {
            ended.add(number + " with resistors: " + sound.state().word());
        } else {
            forged(session, Forgery.wrongResistor(random), number);
        }
        Files.delete(session);
    }

    private static Sheets withBank(Sheets sheets) {
        String bench = LOAD.matcher(sheets.bench().text()).replaceFirst("");
        String bank =
                "\n[[resistor_bank]]\nrail = \"plus\"\nresistances_ohm = [9.2, 12.2, 18.4, 36.7]\ntolerance_pct = 1\n";
        return new Sheets(sheets.design(), Sheets.bench("bench.toml", bench + bank), sheets.plan());
    }

    /** A load that reads its own voltage, soundly, accuses no one. */
    private void believed(Path session, int number) throws IOException {
        Path copy = ForgedCopy.of(session, Forgery.none(), folder.resolve(number + "-copy.session"));
        List<Contradiction> against = judged(copy).findings().contradictions();
        if (!against.isEmpty()) {
            accused.put(number + " with a load that reads its voltage", texts(against));
        }
        Files.delete(copy);
    }

    private void forged(Path session, Forgery forgery, int number) throws IOException {
        Path copy = ForgedCopy.of(session, forgery, folder.resolve(number + "-forged.session"));
        SessionFindings findings = judged(copy);
        List<Contradiction> against = findings.findings().contradictions();
        boolean named = against.stream()
                .anyMatch(one -> forgery.expected().contains(one.code().word()));
        boolean believed = findings.findings().verdict() == Fitness.FIT;
        if (!named || believed) {
            missed.add(number + ": " + forgery.name() + ": " + texts(against));
        } else {
            found.merge(forgery.name().replaceAll("[0-9.]{5,}", "x"), 1, Integer::sum);
        }
        Files.delete(copy);
    }

    private static SessionFindings judged(Path session) {
        try (SessionFile file = SessionFile.open(session)) {
            return SessionFindings.judged(file);
        }
    }

    private static List<String> texts(List<Contradiction> against) {
        return against.stream()
                .map(one -> one.code().word() + ": " + one.text())
                .toList();
    }

    /** The demo on another bench: other accuracies, up to eight times worse, other leads. */
    private Sheets sheets() {
        Sheets demo = Sheets.demo();
        double worse = Math.exp(random.nextDouble() * Math.log(8));
        String text = PERCENT.matcher(demo.bench().text())
                .replaceAll(match -> Matcher.quoteReplacement(String.format(
                        Locale.ROOT, "%s = %.6f", match.group(1), worse * Double.parseDouble(match.group(2)))));
        text = text.replaceFirst(
                "lead_resistance_ohm = [0-9.]+",
                String.format(Locale.ROOT, "lead_resistance_ohm = %.4f", 0.05 * random.nextDouble()));
        return new Sheets(demo.design(), Sheets.bench("bench.toml", text), demo.plan());
    }

    public static void main(String[] arguments) throws IOException {
        int benches = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 50;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 13;
        Path folder = Files.createTempDirectory("forgery");
        ForgeryStudy study = new ForgeryStudy(folder, seed);
        for (int i = 0; i < benches; i++) {
            study.bench(i);
            if (i % 4 == 0) {
                study.resistors(i);
            }
        }
        Files.delete(folder);
        System.out.println(benches + " benches, seed " + seed + "; accused though sound: " + study.accused.size());
        study.accused.forEach((bench, texts) -> System.out.println("  " + bench + ": " + texts));
        System.out.println("ended early, so not forged: " + study.ended);
        study.found.forEach((name, count) -> System.out.println("found " + count + ": " + name));
        System.out.println("missed: " + study.missed.size());
        study.missed.forEach(line -> System.out.println("  " + line));
    }
}
