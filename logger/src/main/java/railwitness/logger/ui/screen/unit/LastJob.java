package railwitness.logger.ui.screen.unit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SheetEntry;
import railwitness.logger.ui.screen.stage.SessionNames;

/** The sheets of the job before, taken from the session that was recorded last. */
final class LastJob {
    private LastJob() {}

    /** Slow; empty where no session has all three sheets. */
    static Optional<Sheets> in(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> latest = files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .sorted(Comparator.comparingLong(
                                    (Path file) -> file.toFile().lastModified())
                            .reversed())
                    .toList();
            return latest.stream().flatMap(file -> of(file).stream()).findFirst();
        }
    }

    private static Optional<Sheets> of(Path file) {
        try (SessionFile session = SessionFile.open(file)) {
            Optional<SheetEntry> design = session.sheet("design");
            Optional<SheetEntry> bench = session.sheet("bench");
            Optional<SheetEntry> plan = session.sheet("plan");
            return design.isEmpty() || bench.isEmpty() || plan.isEmpty()
                    ? Optional.empty()
                    : Optional.of(new Sheets(
                            Sheets.design(design.get().fileName(), design.get().text()),
                            Sheets.bench(bench.get().fileName(), bench.get().text()),
                            Sheets.plan(plan.get().fileName(), plan.get().text())));
        } catch (RuntimeException unreadable) {
            return Optional.empty();
        }
    }
}
