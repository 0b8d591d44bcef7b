package railwitness.logger.ui.screen.sessions;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import railwitness.logger.ui.screen.stage.SessionNames;

/** Reads which sessions are in a folder. */
final class SessionFolder {
    private SessionFolder() {}

    /** The latest first. */
    static List<SessionEntry> read(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .map(SessionEntry::read)
                    .sorted(Comparator.comparing((SessionEntry entry) ->
                                    entry.head().map(head -> head.startedWall()).orElse(Instant.EPOCH))
                            .reversed()
                            .thenComparing(SessionEntry::file))
                    .toList();
        }
    }

    /** A name in the folder that no file has yet: as it is, or with a number behind it. */
    static Path free(Path folder, String name, String ending) {
        Path wanted = folder.resolve(name + ending);
        for (int i = 2; Files.exists(wanted); i++) {
            wanted = folder.resolve(name + "-" + i + ending);
        }
        return wanted;
    }

    /** A file's name without its ending. */
    static String stem(Path file) {
        return file.getFileName().toString().replaceFirst("\\.[^.]+$", "");
    }
}
