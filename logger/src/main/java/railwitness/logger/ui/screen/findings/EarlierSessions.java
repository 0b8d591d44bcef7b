package railwitness.logger.ui.screen.findings;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.ui.screen.stage.SessionNames;
import railwitness.logger.ui.screen.widgets.Numbers;

/** Which sessions a certificate can cite as the test before: of the same unit, begun before it, in the same folder. */
final class EarlierSessions {
    private EarlierSessions() {}

    /** One of them. */
    record Before(Path file, SessionHead head) {
        String words() {
            String condition = head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition();
            return Numbers.moment(head.startedWall(), head.zone()) + condition;
        }
    }

    /** The latest first. */
    static List<Before> of(Path session, SessionHead now) throws IOException {
        try (Stream<Path> files = Files.list(session.toAbsolutePath().getParent())) {
            return files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .flatMap(file -> head(file).map(head -> new Before(file, head)).stream())
                    .filter(before -> before.head().unitSerial().equals(now.unitSerial())
                            && before.head().unitName().equals(now.unitName())
                            && !before.head().id().equals(now.id())
                            && before.head().startedWall().isBefore(now.startedWall()))
                    .sorted(Comparator.comparing(
                                    (Before before) -> before.head().startedWall())
                            .reversed())
                    .toList();
        }
    }

    private static Optional<SessionHead> head(Path file) {
        try (SessionFile opened = SessionFile.open(file)) {
            return Optional.of(opened.head());
        } catch (StoreException e) {
            return Optional.empty();
        }
    }
}
