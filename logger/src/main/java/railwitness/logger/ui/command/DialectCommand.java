package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.instrument.Dialect;
import railwitness.drivers.instrument.DialectDraft;
import railwitness.drivers.instrument.DialectTrial;
import railwitness.drivers.instrument.DialectTrial.Tried;
import railwitness.drivers.instrument.Dialects;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.SerialLine;

/** A dialect held against an instrument. */
@Command(
        name = "dialect",
        mixinStandardHelpOptions = true,
        description = {
            "Tries a dialect on an instrument and says line by line what holds.",
            "Only questions are sent: nothing is set, reset or switched on. With --write a dialect file to begin with is"
                    + " made from what the instrument answered."
        },
        footer = {
            "",
            "Example: railwitness dialect scpi-1999 /dev/ttyUSB0 --kind supply --write mine.toml",
            "Example: railwitness dialect mine.toml tcp://192.168.1.20:5025"
        })
final class DialectCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "dialect file, or the name of a dialect of the program")
    private String dialect;

    @Parameters(index = "1", paramLabel = "PORT", description = "serial port, or tcp://host:port of a network socket")
    private String port;

    @Mixin
    private PortOptions settings;

    @Option(
            names = "--kind",
            paramLabel = "meter|supply|load|scope",
            description = "What the instrument is; without it all parts of the dialect are tried.")
    private Optional<String> kind = Optional.empty();

    @Option(names = "--within", paramLabel = "SECONDS", description = "longest wait for each reply in s (default 1)")
    private double withinSeconds = 1;

    @Option(names = "--write", paramLabel = "FILE", description = "dialect file to make; it must not exist")
    private Path write;

    @Override
    public Integer call() {
        Set<String> kinds = kind.<Set<String>>map(Set::of).orElseGet(() -> new TreeSet<>(DialectTrial.KINDS));
        if (!DialectTrial.KINDS.containsAll(kinds)) {
            throw new BadInput("--kind " + kind.orElse("") + " is not one of " + String.join(", ", DialectTrial.KINDS));
        }
        if (write != null && Files.exists(write)) {
            throw new BadInput(write + " exists; choose another file name");
        }
        Dialect known = dialect.endsWith(".toml") ? Dialects.of(Path.of(dialect)) : shipped();
        List<Tried> tried;
        try (Line line = SerialLine.open(settings.of(port))) {
            tried = new DialectTrial(line, Duration.ofMillis(Math.round(withinSeconds * 1000))).of(known, kinds);
        }
        PrintWriter out = spec.commandLine().getOut();
        tried.forEach(one -> out.println(line(one)));
        out.println();
        out.println(
                "not tried, because it changes something: " + String.join("; ", DialectTrial.leftAlone(known, kinds)));
        long holds = tried.stream().filter(Tried::holds).count();
        out.println(holds + " of " + tried.size() + " questions hold" + missing(tried));
        if (write != null) {
            written(tried);
            out.println(
                    "written: " + write + "; look at each line marked 'not answered', then name the file on the bench"
                            + " sheet: dialect = \"" + write + "\"");
        }
        return missing(tried).isEmpty() ? ExitCode.DONE : ExitCode.INSTRUMENT;
    }

    private Dialect shipped() {
        try {
            return Dialects.shipped().named(dialect);
        } catch (IllegalArgumentException e) {
            throw new BadInput(e.getMessage() + "; a file of one ends in .toml");
        }
    }

    private static String line(Tried one) {
        String reply = one.reply().isEmpty() ? "" : "'" + one.reply() + "' ";
        return String.format(
                Locale.ROOT,
                "%-10s %-24s %-18s %s%s",
                one.holds() ? "holds" : one.needed() ? "NEEDED" : "left out",
                one.key(),
                one.sent(),
                reply,
                one.words());
    }

    private static String missing(List<Tried> tried) {
        List<String> needed = tried.stream()
                .filter(one -> !one.holds() && one.needed())
                .map(Tried::key)
                .toList();
        return needed.isEmpty() ? "" : "; a run needs " + String.join(", ", needed);
    }

    private void written(List<Tried> tried) {
        try {
            String text = dialect.endsWith(".toml") ? Files.readString(Path.of(dialect)) : Dialects.textOf(dialect);
            Files.writeString(write, DialectDraft.of(text, tried), StandardOpenOption.CREATE_NEW);
        } catch (IOException e) {
            throw new BadInput(write + " cannot be written: " + e.getMessage());
        }
    }
}
