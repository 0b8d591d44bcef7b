package railwitness.logger.screen.window;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import railwitness.logger.screen.paper.Words;
import railwitness.logger.screen.stage.SessionNames;
import railwitness.logger.store.SessionFile;
import railwitness.logger.store.SessionState;
import railwitness.logger.store.StoreException;

/** Sessions whose recording broke off: said when the window opens. */
final class Interrupted {
    private Interrupted() {}

    /** One sentence; empty when there are none. */
    static String in(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return "";
        }
        try (Stream<Path> files = Files.list(folder)) {
            long count = files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .filter(Interrupted::brokeOff)
                    .count();
            return count == 0 ? "" : Words.of("interrupted.offer", count);
        }
    }

    private static boolean brokeOff(Path file) {
        try (SessionFile session = SessionFile.open(file)) {
            return session.state() == SessionState.INTERRUPTED;
        } catch (StoreException e) {
            return false;
        }
    }
}
