package railwitness.logger.ui.screen.window;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import railwitness.drivers.converter.FaultCode;
import railwitness.logger.ui.screen.theme.Theme;

/**
 * Every stage at three sizes and three scales, light and dark, as pictures for people to look at. Run it where there is a
 * display: argument, the folder for the pictures.
 */
final class EveryScreen {
    private static final int[] SCALES = {100, 150, 200};
    private static final int[][] SIZES = {{1024, 700}, {1366, 768}, {1920, 1080}};
    private static final double QUICK = 250;
    private static final long PATIENCE_MILLIS = 120_000;

    private final Path pictures;
    private final Path folder;
    private Optional<Path> session = Optional.empty();

    private EveryScreen(Path pictures, Path folder) {
        this.pictures = pictures;
        this.folder = folder;
    }

    public static void main(String[] arguments) throws Exception {
        Path pictures = Path.of(arguments[0]);
        Files.createDirectories(pictures);
        EveryScreen every = new EveryScreen(pictures, Files.createTempDirectory("every-screen"));
        for (int percent : SCALES) {
            Window window = Screenshots.onScreen(() -> Opening.of(every.folder, Theme.LIGHT, "test")
                    .scaled(OptionalInt.of(percent))
                    .open());
            every.look(window, percent);
            Screenshots.onScreen(() -> {
                window.frame().dispose();
                return true;
            });
        }
        System.exit(0);
    }

    private void look(Window window, int percent) throws Exception {
        for (String stage : List.of("unit", "bench", "cautions", "run")) {
            enter(window, stage);
            taken(window, stage, percent);
        }
        if (session.isEmpty()) {
            rehearsed(window, percent);
        } else {
            Screenshots.onScreen(() -> {
                window.desk().open(session.get(), () -> {});
                return true;
            });
        }
        until(() -> window.desk().session().isPresent());
        for (String stage : List.of("findings", "sessions")) {
            enter(window, stage);
            Thread.sleep(1200);
            taken(window, stage, percent);
        }
    }

    private void rehearsed(Window window, int percent) throws Exception {
        Screenshots.onScreen(() -> {
            window.desk()
                    .rehearsal(window.desk()
                            .rehearsal()
                            .withPace(QUICK)
                            .withFault(Optional.of(FaultCode.TIRED_CAPACITOR)));
            window.enter("cautions");
            var acts = window.line().acts();
            acts.get(acts.size() - 1).done().run();
            return true;
        });
        until(() -> window.desk().view().filter(view -> view.liveStep() >= 3).isPresent());
        taken(window, "running", percent);
        until(() -> window.desk().session().isPresent());
        session = Optional.of(
                Screenshots.onScreen(() -> window.desk().session().orElseThrow().file()));
    }

    private static void enter(Window window, String stage) throws Exception {
        Screenshots.onScreen(() -> {
            window.enter(stage);
            return true;
        });
        Thread.sleep(250);
    }

    private void taken(Window window, String stage, int percent) throws Exception {
        for (int[] size : SIZES) {
            Screenshots.onScreen(() -> {
                window.frame().setSize(size[0], size[1]);
                window.frame().validate();
                return true;
            });
            Thread.sleep(400);
            for (Theme theme : Theme.values()) {
                String name = stage + "-" + size[0] + "-" + percent + "-"
                        + theme.name().toLowerCase(Locale.ROOT) + ".png";
                Screenshots.onScreen(() -> {
                    window.theme(theme);
                    window.frame().validate();
                    Screenshots.picture(window.frame().getContentPane(), pictures.resolve(name));
                    return true;
                });
            }
        }
    }

    private static void until(Callable<Boolean> holds) throws Exception {
        long end = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (!Screenshots.onScreen(holds)) {
            if (System.currentTimeMillis() > end) {
                throw new IllegalStateException("waited in vain");
            }
            Thread.sleep(20);
        }
    }
}
