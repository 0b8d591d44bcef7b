package railwitness.logger.ui.command;

import java.time.Duration;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.line.Line;
import railwitness.drivers.line.SerialLine;

/** One exchange with one instrument. */
@Command(
        name = "ask",
        mixinStandardHelpOptions = true,
        description = {
            "Sends one message to a serial port and prints the bare reply.",
            "A message without a question mark is only sent. Careful: nothing watches over what it " + "does."
        },
        footer = {"", "Example: railwitness ask /dev/ttyUSB0 \"*IDN?\" --baud 115200"})
final class AskCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "PORT", description = "device or name of the serial port")
    private String port;

    @Parameters(index = "1", paramLabel = "MESSAGE", description = "what to send, without terminator")
    private String message;

    @Mixin
    private PortOptions settings;

    @Option(names = "--within", paramLabel = "SECONDS", description = "longest wait for the reply in s (default 2)")
    private double withinSeconds = 2;

    @Override
    public Integer call() {
        try (Line line = SerialLine.open(settings.of(port))) {
            if (message.contains("?")) {
                Duration deadline = Duration.ofMillis(Math.round(withinSeconds * 1000));
                spec.commandLine().getOut().println(line.ask(message, deadline));
            } else {
                line.send(message);
            }
        }
        return ExitCode.DONE;
    }
}
