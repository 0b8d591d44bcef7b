package railwitness.logger.recording.store;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where SQLite's native part is unpacked: the folder named by the system property {@code railwitness.native}, else by
 * the environment's {@code RAILWITNESS_NATIVE}, else the temporary folder. A folder that already holds the unpacked
 * library is used as it is.
 */
final class NativeLibrary {
    private NativeLibrary() {}

    /** Sets the folder before the first use of SQLite; throws StoreException when it cannot serve. */
    static void prepare() {
        String folder = System.getProperty("railwitness.native", System.getenv("RAILWITNESS_NATIVE"));
        Path path = Path.of(folder == null ? System.getProperty("java.io.tmpdir") : folder);
        if (System.getProperty("org.sqlite.lib.path") != null || System.getProperty("org.sqlite.tmpdir") != null) {
            return;
        }
        if (folder != null && Files.isRegularFile(path.resolve(System.mapLibraryName("sqlitejdbc")))) {
            System.setProperty("org.sqlite.lib.path", path.toString());
            return;
        }
        if (!Files.isDirectory(path) || !Files.isWritable(path)) {
            throw new StoreException("SQLite's native part cannot be unpacked into " + path
                    + "; name a folder that can be written and executed from with -Drailwitness.native=FOLDER or"
                    + " RAILWITNESS_NATIVE");
        }
        System.setProperty("org.sqlite.tmpdir", path.toString());
    }
}
