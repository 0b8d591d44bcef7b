package railwitness.logger.ui.screen.window;

import java.awt.event.ActionEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import javax.swing.JComponent;
import railwitness.logger.recording.store.LongSession;
import railwitness.logger.ui.screen.findings.FindingsStage;
import railwitness.logger.ui.screen.readings.ReadingsPanel;
import railwitness.logger.ui.screen.theme.Theme;

/**
 * How long a person waits in the window for a long session: until it is open, until all of it is drawn, and from each of
 * two hundred zooms and moves to its finished picture: {@code ZoomTable [READINGS [FILE]]}, by default 20 million.
 */
public final class ZoomTable {
    private static final int MOVES = 200;
    private static final String[] KEYS = {"ADD", "ADD", "ADD", "ADD", "LEFT", "RIGHT", "SUBTRACT", "SUBTRACT", "0"};

    private final Window window;
    private final ReadingsPanel readings;

    private ZoomTable(Window window) {
        this.window = window;
        this.readings = ((FindingsStage) window.stage("findings")).readings();
    }

    public static void main(String[] arguments) throws Exception {
        long count = arguments.length > 0 ? Long.parseLong(arguments[0]) : 20_000_000;
        Path file = arguments.length > 1
                ? Path.of(arguments[1])
                : Files.createTempDirectory("zoom").resolve("long.session");
        if (!Files.exists(file)) {
            LongSession.record(file, count);
        }
        Window window = Screenshots.onScreen(
                () -> Opening.of(file.getParent(), Theme.LIGHT, "unreleased").open());
        new ZoomTable(window).measure(file);
        System.exit(0);
    }

    private void measure(Path file) throws Exception {
        long began = System.nanoTime();
        Screenshots.onScreen(() -> {
            window.desk().open(file, () -> window.enter("findings"));
            return null;
        });
        while (!Screenshots.onScreen(() -> window.present().equals("findings"))) {
            Thread.sleep(1);
        }
        double opened = millisSince(began);
        began = System.nanoTime();
        Screenshots.onScreen(() -> {
            window.line().acts().get(0).done().run();
            return null;
        });
        awaitPicture();
        double first = millisSince(began);
        double[] waits = new double[MOVES];
        Random random = new Random(1);
        for (int i = 0; i < MOVES; i++) {
            String key = KEYS[random.nextInt(KEYS.length)];
            began = System.nanoTime();
            Screenshots.onScreen(() -> {
                JComponent face = readings.face();
                face.getActionMap().get(key).actionPerformed(new ActionEvent(face, ActionEvent.ACTION_PERFORMED, key));
                return null;
            });
            awaitPicture();
            waits[i] = millisSince(began);
        }
        Arrays.sort(waits);
        System.out.printf(
                Locale.ROOT,
                "findings open %.0f ms, all readings drawn %.0f ms, then a zoom or a move to its painted picture: median"
                        + " %.1f ms, p99 %.1f ms, longest %.1f ms%n",
                opened,
                first,
                waits[MOVES / 2],
                waits[MOVES * 99 / 100],
                waits[MOVES - 1]);
    }

    /** Read, and painted. */
    private void awaitPicture() throws Exception {
        while (!Screenshots.onScreen(() -> {
            if (!readings.upToDate()) {
                return false;
            }
            JComponent face = readings.face();
            face.paintImmediately(0, 0, face.getWidth(), face.getHeight());
            return true;
        })) {
            Thread.onSpinWait();
        }
    }

    private static double millisSince(long nanos) {
        return (System.nanoTime() - nanos) / 1e6;
    }
}
