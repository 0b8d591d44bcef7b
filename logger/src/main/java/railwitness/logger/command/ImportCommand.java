package railwitness.logger.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.importing.TableImport;
import railwitness.logger.sheet.SheetText;
import railwitness.logger.sheet.Sheets;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.SessionWriter;

/** Readings from elsewhere, as a session. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = {
            "Takes a CSV table of readings: columns time_s, stage, step and <node>.<what>_<unit>,",
            "such as input.voltage_V, plus.current_A, plus.ripple_V. A negative rail is written with its sign."
        },
        footer = {"", "Example: railwitness import readings.csv --design design.toml --out 0412.session"})
final class ImportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "TABLE", description = "CSV file, UTF-8, decimal points, commas between the cells")
    private Path table;

    @Option(names = "--design", paramLabel = "FILE", description = "design sheet; without it nothing is compared")
    private Path design;

    @Option(names = "--bench", paramLabel = "FILE", description = "bench sheet; without it the accuracy is unknown")
    private Path bench;

    @Option(names = "--out", paramLabel = "SESSION", required = true, description = "session file to make")
    private Path out;

    @Override
    public Integer call() throws IOException {
        Optional<SheetText<Design>> designSheet = Optional.ofNullable(design).map(Sheets::design);
        Optional<SheetText<BenchSheet>> benchSheet = Optional.ofNullable(bench).map(Sheets::bench);
        if (!Files.isReadable(table)) {
            throw new BadInput(table + ": cannot be read; is the name right, and may you read it?");
        }
        SessionWriter writer = SessionWriter.create(
                out,
                Heads.of(
                        designSheet.map(sheet -> sheet.content().unit()),
                        Instant.now(),
                        false,
                        "",
                        table.getFileName().toString()));
        try {
            designSheet.ifPresent(sheet -> writer.sheet(sheet.kind(), sheet.fileName(), sheet.text()));
            benchSheet.ifPresent(sheet -> writer.sheet(sheet.kind(), sheet.fileName(), sheet.text()));
            writer.event(0, "import", "readings taken from " + table.getFileName());
            TableImport.into(writer, table);
            writer.finish(SessionState.COMPLETE);
        } catch (RuntimeException e) {
            writer.close();
            Files.deleteIfExists(out);
            throw e;
        }
        return FindingsPrint.of(out, spec.commandLine().getOut(), false);
    }
}
