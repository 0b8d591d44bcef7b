package railwitness.drivers.line;

/**
 * How to talk over a serial port.
 *
 * @param port device or name as the system knows it
 * @param baud bits per second, 300 to 4 000 000
 * @param dataBits 7 or 8
 * @param stopBits 1 or 2
 * @param terminator what ends a message: LF, CR or CR LF
 */
public record PortSettings(String port, int baud, int dataBits, Parity parity, int stopBits, String terminator) {
    /** The parity bit. */
    public enum Parity {
        NONE,
        EVEN,
        ODD
    }

    public PortSettings {
        within("baud", baud, 300, 4_000_000);
        within("data bits", dataBits, 7, 8);
        within("stop bits", stopBits, 1, 2);
        if (!terminator.matches("\n|\r|\r\n")) {
            throw new IllegalArgumentException("terminator must be LF, CR or CR LF");
        }
    }

    private static void within(String what, int value, int lowest, int highest) {
        if (value < lowest || value > highest) {
            throw new IllegalArgumentException(what + " " + value + " must be " + lowest + " to " + highest);
        }
    }

    /** 9600 baud, 8 data bits, no parity, 1 stop bit, LF: the usual setting of a bench instrument. */
    public static PortSettings usual(String port) {
        return new PortSettings(port, 9600, 8, Parity.NONE, 1, "\n");
    }
}
