package railwitness.drivers.line;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import com.sun.jna.Pointer;
import java.util.ArrayList;
import java.util.List;

/**
 * The signals that ask a program to end (POSIX.1-2001): terminal closed, Ctrl-C, asked to end. What a native library
 * does to them while it is loaded is taken back: the serial library ignores a closed terminal from then on, and the
 * virtual machine would never hear of it.
 */
final class EndSignals {
    private static final int[] NUMBERS = {1, 2, 15};
    /** Larger than this structure is on any system. */
    private static final int ACTION_BYTES = 512;

    private EndSignals() {}

    /** The call of the C library. */
    interface Actions extends Library {
        int sigaction(int signal, Pointer wanted, Pointer before) throws LastErrorException;
    }

    /** Runs what loads a library, then puts the three signals back as they were. */
    static void kept(Runnable loading) {
        if (!Platform.isLinux() && !Platform.isMac()) {
            loading.run();
            return;
        }
        Actions actions = Native.load("c", Actions.class);
        List<Memory> before = new ArrayList<>();
        for (int number : NUMBERS) {
            Memory action = new Memory(ACTION_BYTES);
            actions.sigaction(number, Pointer.NULL, action);
            before.add(action);
        }
        try {
            loading.run();
        } finally {
            for (int i = 0; i < NUMBERS.length; i++) {
                actions.sigaction(NUMBERS[i], before.get(i), Pointer.NULL);
            }
        }
    }
}
