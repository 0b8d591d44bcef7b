package railwitness.logger.ui.command;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.drivers.bench.PortScan;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.line.SerialPorts;

/** Every serial port, and what answers there. */
@Command(
        name = "ports",
        mixinStandardHelpOptions = true,
        description = {
            "Lists every serial port and asks who answers there.",
            "Only *IDN? is sent, at the settings in which instruments leave the works. At a wrong "
                    + "baud rate an instrument may beep."
        },
        footer = {"", "Example: railwitness ports", "Example: railwitness ports /dev/ttyUSB0"})
final class PortsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..*", paramLabel = "PORT", description = "ports to ask (default: all that the system knows)")
    private List<String> only;

    @Option(names = "--quick", description = "Only list them and ask nothing.")
    private boolean quick;

    @Option(names = "--within", paramLabel = "SECONDS", description = "longest wait at each setting in s (default 0.5)")
    private double withinSeconds = 0.5;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        List<String> ports = only == null
                ? SerialPorts.list().stream().map(SerialPorts.Port::device).toList()
                : only;
        if (ports.isEmpty()) {
            out.println("no serial ports found; is the adapter plugged in, and may you use it?");
        } else if (quick) {
            ports.forEach(out::println);
        } else {
            Duration patience = Duration.ofMillis(Math.round(withinSeconds * 1000));
            new PortScan(SerialLine::open, patience).scan(ports).forEach(found -> out.println(words(found)));
        }
        out.flush();
        return ExitCode.DONE;
    }

    private static String words(PortScan.Found found) {
        if (!found.trouble().isEmpty()) {
            return found.port() + "\t" + found.trouble();
        }
        return found.port() + "\t"
                + found.settings()
                        .map(at -> found.identity() + "\t" + at.baud() + " baud, " + end(at.terminator()) + ", dialect "
                                + found.dialect())
                        .orElse("silent at the usual settings");
    }

    private static String end(String terminator) {
        return switch (terminator) {
            case "\n" -> "LF";
            case "\r" -> "CR";
            default -> "CR LF";
        };
    }
}
