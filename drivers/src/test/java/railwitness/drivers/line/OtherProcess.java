package railwitness.drivers.line;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;

/** A second Java process on the same port. */
final class OtherProcess {
    private OtherProcess() {}

    /** Runs {@link #main} in a process of its own and returns what it printed. */
    static String run(String what, String device) throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Process process = new ProcessBuilder(
                        java,
                        "-Xshare:auto",
                        "-cp",
                        System.getProperty("java.class.path"),
                        OtherProcess.class.getName(),
                        what,
                        device)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        process.waitFor();
        return printed;
    }

    public static void main(String[] arguments) {
        PortSettings settings = PortSettings.usual(arguments[1]);
        switch (arguments[0]) {
            case "open" -> open(settings);
            case "share" -> share(settings);
            default -> leave(settings);
        }
    }

    private static void open(PortSettings settings) {
        try (SerialLine line = SerialLine.open(settings)) {
            System.out.println("opened " + line.port());
        } catch (LineException e) {
            System.out.println(e.trouble());
        }
    }

    private static void share(PortSettings settings) {
        try (SerialLine line = SerialLine.openShared(settings)) {
            System.out.println(line.cutIn(bytes("\nSHARED OFF\n")) ? "sent" : "gone");
        }
    }

    private static void leave(PortSettings settings) {
        SerialLine line = SerialLine.open(settings);
        SerialPorts.beforePortsClose("off", () -> {
            line.cutIn(bytes("\nLAST OFF\n"));
            line.close();
        });
        line.ask("HERE?", Duration.ofSeconds(2));
        System.out.println("leaving");
        System.exit(0);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
