package railwitness.logger.ui.command;

import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import railwitness.logger.ui.screen.theme.Theme;
import railwitness.logger.ui.screen.window.Opening;

/** The whole job in one window. */
@Command(
        name = "window",
        mixinStandardHelpOptions = true,
        description = {
            "Opens the window, where the whole job can be done.",
            "Its stages are unit, bench, cautions, run, findings and sessions. railwitness without a "
                    + "command opens it too. Escape switches the supply off, always."
        },
        footer = {"", "Example: railwitness window 0412.session --dark"})
final class WindowCommand implements Callable<Integer> {
    @Parameters(arity = "0..1", paramLabel = "SESSION", description = "a session file to look at")
    private Path session;

    @Option(names = "--dark", description = "Use dark paper.")
    private boolean dark;

    @Option(names = "--scale", paramLabel = "PERCENT", description = "size of everything in per cent, 100 to 200")
    private Integer scale;

    @Option(
            names = "--folder",
            paramLabel = "FOLDER",
            description = "Where sessions are kept; railwitness-sessions in your home, where left out.")
    private Path folder = Path.of(System.getProperty("user.home"), "railwitness-sessions");

    @Override
    public Integer call() throws InterruptedException {
        if (GraphicsEnvironment.isHeadless()) {
            throw new BadInput("no window: there is no display here; use the commands instead (railwitness --help)");
        }
        if (scale != null && (scale < 100 || scale > 200)) {
            throw new BadInput("--scale " + scale + " must be 100 to 200");
        }
        Opening.of(folder, dark ? Theme.DARK : Theme.LIGHT, Main.Version.text())
                .scaled(scale == null ? OptionalInt.empty() : OptionalInt.of(scale))
                .on(Optional.ofNullable(session))
                .untilClosed();
        return ExitCode.DONE;
    }
}
