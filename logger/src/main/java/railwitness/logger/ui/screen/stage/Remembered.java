package railwitness.logger.ui.screen.stage;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;

/**
 * What is remembered for the next time: choices, and questions that were answered. It is a small file of text in the
 * folder of the sessions and not in {@code java.util.prefs}: it can be read and mended with an editor, goes with the
 * sessions when their folder is moved or shared by a workshop, and nothing stays elsewhere on the computer. Where it
 * cannot be written it lasts until the program ends.
 */
public final class Remembered {
    private static final String NAME = "window.properties";

    private final Path file;
    private final Properties all = new Properties();

    /** @param folder of the sessions; need not be there yet */
    public Remembered(Path folder) {
        file = folder.resolve(NAME);
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            all.load(reader);
        } catch (IOException | IllegalArgumentException e) {
            all.clear();
        }
    }

    public synchronized Optional<String> get(String key) {
        return Optional.ofNullable(all.getProperty(key));
    }

    /** Remembers it from now on. */
    public synchronized void put(String key, String value) {
        if (value.equals(all.setProperty(key, value))) {
            return;
        }
        Path part = file.resolveSibling("." + NAME + ".part");
        try {
            Files.createDirectories(file.getParent());
            try (Writer writer = Files.newBufferedWriter(part, StandardCharsets.UTF_8)) {
                all.store(writer, null);
            }
            Files.move(part, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            part.toFile().delete();
        }
    }
}
