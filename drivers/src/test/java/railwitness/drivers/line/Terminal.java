package railwitness.drivers.line;

import org.junit.jupiter.api.Assumptions;

/** Skips a test, with its reason printed, where there are no pseudo-terminals. */
final class Terminal {
    private Terminal() {}

    static void assume() {
        boolean available = PseudoTerminal.available();
        if (!available) {
            System.out.println("skipped: this system has no pseudo-terminals (Linux and macOS have)");
        }
        Assumptions.assumeTrue(available, "this system has no pseudo-terminals");
    }
}
