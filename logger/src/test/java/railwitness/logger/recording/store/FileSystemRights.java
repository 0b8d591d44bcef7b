package railwitness.logger.recording.store;

import com.sun.jna.Library;
import com.sun.jna.Native;

/**
 * Drops the calling thread's rights to files to those of nobody, as root is refused nothing. Linux keeps this identity
 * for each thread.
 */
final class FileSystemRights {
    private static final int NOBODY = 65_534;

    private FileSystemRights() {}

    interface SystemLibrary extends Library {
        int setfsuid(int user);

        int geteuid();
    }

    /** Runs the task as nobody where the tests run as root, else as it is. */
    static void without(Runnable task) {
        SystemLibrary system = Native.load("c", SystemLibrary.class);
        int user = system.geteuid();
        system.setfsuid(user == 0 ? NOBODY : user);
        try {
            task.run();
        } finally {
            system.setfsuid(user);
        }
    }
}
