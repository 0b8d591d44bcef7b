package railwitness.logger.ui.command;

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
import railwitness.logger.recording.importing.TableForm;
import railwitness.logger.recording.importing.TableSession;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;

/** Readings from elsewhere, as a session. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a session of a CSV table of readings taken elsewhere.",
            "Columns are time_s, stage, step and <node>.<what>_<unit>, such as input.voltage_V, "
                    + "plus.current_A, plus.ripple_V. A negative rail is written with its sign. What export "
                    + "wrote is taken back."
        },
        footer = {
            "",
            "Example: railwitness import readings.csv --design design.toml --out 0412.session",
            "Example: railwitness import readings.csv --decimal comma --separator semicolon --time iso8601 --out x.session"
        })
final class ImportCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "TABLE", description = "CSV file (RFC 4180), UTF-8")
    private Path table;

    @Option(names = "--design", paramLabel = "FILE", description = "Design sheet. Without it nothing is compared.")
    private Path design;

    @Option(names = "--bench", paramLabel = "FILE", description = "Bench sheet. Without it the accuracy is unknown.")
    private Path bench;

    @Option(names = "--out", paramLabel = "SESSION", required = true, description = "session file to make")
    private Path out;

    @Option(names = "--decimal", paramLabel = "point|comma", description = "decimal mark (default point)")
    private Decimal decimal = Decimal.point;

    @Option(
            names = "--separator",
            paramLabel = "comma|semicolon|tab",
            description = "What stands between cells: comma, or semicolon with decimal commas, where left out.")
    private Separator separator;

    @Option(
            names = "--time",
            paramLabel = "seconds|iso8601",
            description = "How time is given: seconds (default) in column time_s, or instants in column time.")
    private Time time = Time.seconds;

    @Option(
            names = "--units",
            paramLabel = "names|cells",
            description = "Where units stand: in the names of the columns (default), or in each cell, such as 13.8 V.")
    private Units units = Units.names;

    enum Decimal {
        point,
        comma
    }

    enum Separator {
        comma(','),
        semicolon(';'),
        tab('\t');

        private final char sign;

        Separator(char sign) {
            this.sign = sign;
        }
    }

    enum Time {
        seconds,
        iso8601
    }

    enum Units {
        names,
        cells
    }

    private TableForm form() {
        Separator usual = decimal == Decimal.comma ? Separator.semicolon : Separator.comma;
        return new TableForm(
                (separator == null ? usual : separator).sign,
                decimal == Decimal.comma,
                time == Time.iso8601,
                units == Units.cells);
    }

    @Override
    public Integer call() throws IOException {
        Optional<SheetText<Design>> designSheet = Optional.ofNullable(design).map(Sheets::design);
        Optional<SheetText<BenchSheet>> benchSheet = Optional.ofNullable(bench).map(Sheets::bench);
        if (!Files.isReadable(table)) {
            throw new BadInput(table + ": cannot be read; is the name right, and may you read it?");
        }
        new TableSession(table, form(), designSheet, benchSheet)
                .write(
                        out,
                        start -> Heads.of(
                                designSheet.map(sheet -> sheet.content().unit()),
                                start.wall().orElseGet(Instant::now),
                                start.rehearsal(),
                                "",
                                table.getFileName().toString()),
                        share -> {});
        return FindingsPrint.of(out, spec.commandLine().getOut(), false);
    }
}
