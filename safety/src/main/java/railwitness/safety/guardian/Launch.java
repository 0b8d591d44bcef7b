package railwitness.safety.guardian;

import java.io.File;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.drivers.scpi.SwitchState;

/**
 * The command that starts the guardian: a small JVM in a session of its own where the system has {@code setsid}, so
 * that what ends the program's whole process group does not end it. A shell between the two ignores hang-ups and keeps
 * the JVM from being the session's leader, because a leader that opens a terminal would be ended with it.
 */
final class Launch {
    private static final List<String> SMALL = List.of(
            "-Xmx16m",
            "-Xms8m",
            "-Xss256k",
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-XX:-UsePerfData",
            "-XX:-StackTraceInThrowable",
            "-XX:+DisableAttachMechanism",
            "-Xshare:auto");
    private static final String SHIELD = "trap '' HUP INT QUIT; \"$@\"; exit $?";

    List<String> command() {
        List<String> command = new ArrayList<>();
        Optional<String> shell = onPath("sh");
        if (shell.isPresent()) {
            onPath("setsid").ifPresent(command::add);
            command.addAll(List.of(shell.get(), "-c", SHIELD, "guardian"));
        }
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(SMALL);
        command.addAll(List.of("-cp", homes(), GuardianMain.class.getName()));
        return command;
    }

    /** True when the guardian outlives what ends the program's process group. */
    static boolean detaches() {
        return onPath("setsid").isPresent() && onPath("sh").isPresent();
    }

    /** The guardian's own place, and that of the piece that knows what an answer to the question for off means. */
    private static String homes() {
        return home(GuardianMain.class) + File.pathSeparator + home(SwitchState.class);
    }

    private static String home(Class<?> piece) {
        try {
            return Path.of(piece.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException("the program's own place has no path", e);
        }
    }

    private static Optional<String> onPath(String name) {
        String path = Optional.ofNullable(System.getenv("PATH")).orElse("");
        return Stream.of(path.split(File.pathSeparator))
                .filter(folder -> !folder.isBlank())
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .map(Path::toString)
                .findFirst();
    }
}
