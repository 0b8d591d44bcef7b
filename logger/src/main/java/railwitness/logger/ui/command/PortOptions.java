package railwitness.logger.ui.command;

import picocli.CommandLine.Option;
import railwitness.drivers.line.PortSettings;

/** How to talk over a serial port, as options. */
final class PortOptions {
    @Option(names = "--baud", paramLabel = "N", description = "bits per second (default 9600)")
    private int baud = 9600;

    @Option(names = "--data-bits", paramLabel = "N", description = "7 or 8 (default 8)")
    private int dataBits = 8;

    @Option(names = "--parity", paramLabel = "none|even|odd", description = "parity bit (default none)")
    private Parity parity = Parity.none;

    @Option(names = "--stop-bits", paramLabel = "N", description = "1 or 2 (default 1)")
    private int stopBits = 1;

    @Option(names = "--terminator", paramLabel = "LF|CR|CRLF", description = "what ends a message (default LF)")
    private Terminator terminator = Terminator.LF;

    enum Parity {
        none,
        even,
        odd
    }

    enum Terminator {
        LF("\n"),
        CR("\r"),
        CRLF("\r\n");

        private final String text;

        Terminator(String text) {
            this.text = text;
        }
    }

    PortSettings of(String port) {
        return new PortSettings(
                port,
                baud,
                dataBits,
                PortSettings.Parity.valueOf(parity.name().toUpperCase(java.util.Locale.ROOT)),
                stopBits,
                terminator.text);
    }
}
