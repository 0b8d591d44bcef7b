package railwitness.logger.ui.command;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import railwitness.logger.text.VisibleWriter;

/** Where the program starts. */
@Command(
        name = "railwitness",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        synopsisSubcommandLabel = "[COMMAND]",
        description = {"Proves a step-up supply on the bench: powers it safely, records it, works out its " + "figures."
        },
        footer = {"", "Example: railwitness rehearse", "COMMAND --help shows each command with an example."},
        subcommands = {
            WindowCommand.class,
            RehearseCommand.class,
            RunCommand.class,
            FindingsCommand.class,
            CertificateCommand.class,
            CompareCommand.class,
            VerifyCommand.class,
            ExportCommand.class,
            ImportCommand.class,
            ImportTraceCommand.class,
            DesignCommand.class,
            CheckCommand.class,
            PlanCommand.class,
            ContinueCommand.class,
            WatchCommand.class,
            PortsCommand.class,
            AskCommand.class,
            DialectCommand.class,
            StandInCommand.class
        })
public final class Main {
    /** The version in the jar's manifest. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"railwitness " + text()};
        }

        static String text() {
            String version = Main.class.getPackage().getImplementationVersion();
            return version == null ? "unreleased" : version;
        }
    }

    Main() {}

    public static void main(String[] arguments) {
        System.exit(run(arguments));
    }

    /** Runs one command and returns its exit code; never throws. */
    static int run(String... arguments) {
        return run(new PrintWriter(System.out, true), new PrintWriter(System.err, true), arguments);
    }

    static int run(PrintWriter out, PrintWriter err, String... arguments) {
        if (arguments.length == 0) {
            return run(out, err, "window");
        }
        CommandLine line = new CommandLine(new Main())
                .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
                .setOut(new PrintWriter(new VisibleWriter(out), true))
                .setErr(new PrintWriter(new VisibleWriter(err), true));
        Help.widen(line);
        line.setExecutionExceptionHandler((e, where, parsed) -> Refusal.of(e).print(where.getErr()));
        line.setParameterExceptionHandler((e, args) -> {
            e.getCommandLine()
                    .getErr()
                    .println(e.getMessage() + " (see railwitness "
                            + (e.getCommandLine().getParent() == null
                                    ? ""
                                    : e.getCommandLine().getCommandName() + " ")
                            + "--help)");
            return ExitCode.BAD_INPUT;
        });
        return ended(line, arguments);
    }

    /** What no command expects, a lack of memory included, is one line too. */
    private static int ended(CommandLine line, String... arguments) {
        try {
            return line.execute(arguments);
        } catch (Exception | Error e) {
            return Refusal.of(e).print(line.getErr());
        }
    }
}
