package railwitness.logger.ui.screen.window;

import java.awt.Component;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import javax.swing.SwingUtilities;
import railwitness.drivers.converter.FaultCode;
import railwitness.logger.ui.screen.live.RunView;
import railwitness.logger.ui.screen.theme.Theme;

/** Writes pictures of every stage, light and dark: {@code Screenshots FOLDER [PERCENT [WIDTH HEIGHT]]}. */
public final class Screenshots {
    private static final double PACE = 8;
    private final Path folder;
    private final String suffix;
    private final Window window;

    private Screenshots(Path folder, String suffix, Window window) {
        this.folder = folder;
        this.suffix = suffix;
        this.window = window;
    }

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        OptionalInt percent =
                arguments.length > 1 ? OptionalInt.of(Integer.parseInt(arguments[1])) : OptionalInt.empty();
        Files.createDirectories(folder);
        Path sessions = Files.createTempDirectory("screenshots");
        Window window = onScreen(() ->
                Opening.of(sessions, Theme.LIGHT, "unreleased").scaled(percent).open());
        String suffix = percent.isPresent() ? "-" + percent.getAsInt() : "";
        if (arguments.length > 3) {
            suffix += "-" + arguments[2] + "x" + arguments[3];
            onScreen(() -> {
                window.frame().setSize(Integer.parseInt(arguments[2]), Integer.parseInt(arguments[3]));
                return true;
            });
        }
        new Screenshots(folder, suffix, window).all();
        onScreen(() -> {
            window.frame().dispose();
            return null;
        });
        System.exit(0);
    }

    private void all() throws Exception {
        stage("unit");
        stage("bench");
        stage("cautions");
        stage("run");
        onScreen(() -> {
            window.desk().rehearsal(window.desk().rehearsal().withPace(PACE));
            window.enter("cautions");
            return null;
        });
        press("cautions");
        until(view -> view.liveStep() == 4 && view.steps().get(4).averagedFrom().isEmpty());
        both("running");
        until(RunView::over);
        Thread.sleep(1500);
        both("over");
        stage("findings");
        onScreen(() -> {
            window.desk()
                    .rehearsal(window.desk()
                            .rehearsal()
                            .withPace(60)
                            .withFault(java.util.Optional.of(FaultCode.TIRED_CAPACITOR)));
            window.enter("cautions");
            return null;
        });
        press("cautions");
        until(RunView::over);
        Thread.sleep(1500);
        stage("findings");
        aboutRow(9);
        Thread.sleep(200);
        both("findings-fault");
        onScreen(() -> {
            ((railwitness.logger.ui.screen.findings.FindingsStage) window.stage("findings")).toReadings();
            return null;
        });
        Thread.sleep(1000);
        both("readings");
        press0();
        Thread.sleep(500);
        press0();
        Thread.sleep(5000);
        both("certificate");
        stage("sessions");
    }

    private void aboutRow(int row) throws Exception {
        onScreen(() -> {
            sheet("findings sheet").select(row);
            return null;
        });
    }

    private railwitness.logger.ui.screen.widgets.RuledSheet sheet(String name) {
        return (railwitness.logger.ui.screen.widgets.RuledSheet) named(window.frame(), name);
    }

    private static Component named(java.awt.Container in, String name) {
        for (Component one : in.getComponents()) {
            if (name.equals(one.getName())) {
                return one;
            }
            Component found = one instanceof java.awt.Container inner ? named(inner, name) : null;
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    private void press0() throws Exception {
        onScreen(() -> {
            window.line().acts().get(window.line().acts().size() - 1).done().run();
            return null;
        });
    }

    private void press(String stage) throws Exception {
        press0();
        while (!onScreen(() -> window.desk().running())) {
            Thread.sleep(50);
        }
    }

    private void until(Predicate<RunView> reached) throws Exception {
        while (!onScreen(() -> reached.test(window.desk().run().orElseThrow().view()))) {
            Thread.sleep(30);
        }
    }

    private void stage(String key) throws Exception {
        onScreen(() -> {
            window.enter(key);
            return null;
        });
        Thread.sleep(300);
        both(key);
    }

    private void both(String name) throws Exception {
        for (Theme theme : new Theme[] {Theme.DARK, Theme.LIGHT}) {
            onScreen(() -> {
                window.theme(theme);
                picture(
                        window.frame().getContentPane(),
                        folder.resolve(name + "-" + theme.name().toLowerCase(java.util.Locale.ROOT) + suffix + ".png"));
                return null;
            });
        }
    }

    static void picture(Component content, Path file) {
        BufferedImage image = new BufferedImage(content.getWidth(), content.getHeight(), BufferedImage.TYPE_INT_RGB);
        content.validate();
        content.printAll(image.createGraphics());
        try {
            ImageIO.write(image, "png", file.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static <T> T onScreen(Callable<T> task) throws Exception {
        FutureTask<T> future = new FutureTask<>(task);
        SwingUtilities.invokeLater(future);
        return future.get();
    }
}
