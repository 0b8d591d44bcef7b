package railwitness.logger.campaign;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import railwitness.analysis.verdict.Fitness;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.importing.TableForm;
import railwitness.logger.recording.importing.TablePreview;
import railwitness.logger.recording.sheet.Sheets;

/**
 * Reads sheets and tables in which something is wrong: each is either taken or refused in words, within ten seconds of the processor. Of the
 * tables every tenth is imported and worked out, and every tenth with a value that no unit has: none of those is fit.
 * Arguments: sheets, tables (30 000 and 10 000 if left out), first seed. Ends with 1 when one was not.
 */
final class MutatedFiles {
    private static final long LONGEST_NANOS = 10_000_000_000L;

    private final List<String> faults = new ArrayList<>();
    private int taken;

    public static void main(String[] arguments) throws IOException {
        int sheets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 30_000;
        int tables = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 10_000;
        long first = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        MutatedFiles files = new MutatedFiles();
        files.sheets(sheets, first);
        System.out.println(sheets + " sheets, taken " + files.taken + ", faults " + files.faults.size());
        files.taken = 0;
        files.tables(tables, first);
        System.out.println(tables + " tables, taken " + files.taken + ", faults " + files.faults.size());
        files.taken = 0;
        files.implausible(tables / 10, first);
        System.out.println(
                tables / 10 + " implausible tables, taken " + files.taken + ", faults " + files.faults.size());
        files.faults.stream().limit(30).forEach(System.out::println);
        System.exit(files.faults.isEmpty() ? 0 : 1);
    }

    List<String> faults() {
        return faults;
    }

    int taken() {
        return taken;
    }

    void sheets(int count, long first) {
        Sheets demo = Sheets.demo();
        List<String> texts =
                List.of(demo.design().text(), demo.bench().text(), demo.plan().text());
        List<BiFunction<String, String, ?>> readers = List.of(Sheets::design, Sheets::bench, Sheets::plan);
        for (long seed = first; seed < first + count; seed++) {
            int kind = (int) (seed % 3);
            String text = Mutation.of(texts.get(kind), new Random(seed));
            held("sheet", seed, () -> {
                try {
                    readers.get(kind).apply("x.toml", text);
                    return true;
                } catch (SheetException refused) {
                    return refused.getMessage().isBlank() || refused.faults().size() > 40 ? null : false;
                }
            });
        }
    }

    void tables(int count, long first) throws IOException {
        Path file = Files.createTempFile("mutated", ".csv");
        String table = PlausibleTable.text();
        try {
            for (long seed = first; seed < first + count; seed++) {
                Random random = new Random(seed);
                String text = seed % 2 == 0 ? Mutation.ofTable(table, random) : Mutation.of(table, random);
                Files.write(file, text.getBytes(StandardCharsets.UTF_8));
                held("table", seed, () -> TablePreview.of(file, TableForm.USUAL, 5)
                        .fault()
                        .isEmpty());
                if ((seed - first) % 1000 == 999) {
                    System.out.println((seed - first + 1) + " tables, faults " + faults.size());
                }
                if (seed % 10 < 2) {
                    held("import of table", seed, () -> PlausibleTable.findings(file)
                            .isPresent());
                }
            }
        } finally {
            Files.deleteIfExists(file);
        }
    }

    /** Tables in which one value, in one row or in all rows of a point, is none of a unit that works. */
    void implausible(int count, long first) throws IOException {
        Path file = Files.createTempFile("implausible", ".csv");
        try {
            for (long seed = first; seed < first + count; seed++) {
                PlausibleTable.Spoilt spoilt = PlausibleTable.spoilt(new Random(seed));
                Files.writeString(file, spoilt.text());
                held("implausible table (" + spoilt.what() + ")", seed, () -> PlausibleTable.findings(file)
                        .map(findings -> {
                            if (findings.findings().verdict() == Fitness.FIT) {
                                throw new IllegalStateException("fit");
                            }
                            return true;
                        })
                        .orElse(false));
            }
        } finally {
            Files.deleteIfExists(file);
        }
    }

    private void held(String what, long seed, java.util.function.Supplier<Boolean> read) {
        long began = ownNanos();
        try {
            Boolean answer = read.get();
            if (answer == null) {
                faults.add(what + " " + seed + ": refused without words, or with too many");
            } else if (answer) {
                taken++;
            }
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            faults.add(what + " " + seed + ": " + e);
        }
        if (ownNanos() - began > LONGEST_NANOS) {
            faults.add(what + " " + seed + ": took longer than 10 s of its own time");
        }
    }

    /** The processor's time, so that a busy computer accuses nobody. */
    private static long ownNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }
}
