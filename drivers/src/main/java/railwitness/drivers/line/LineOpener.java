package railwitness.drivers.line;

/** Opens the wire to a port: a serial one, or one of the virtual bench. */
@FunctionalInterface
public interface LineOpener {
    /** @throws LineException when there is no such port, or it is in use */
    Line open(PortSettings settings);
}
