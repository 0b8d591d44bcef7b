package railwitness.drivers.line;

/** Bytes to an instrument and back: a serial port, or a socket. */
interface Wire {
    /** {@link #read} returns this when the port has gone. */
    int GONE = -1;

    /**
     * What the port's name means: a serial port, or the address of a socket.
     *
     * @param shared true to open a port that another process holds
     * @throws LineException when there is no such port, or it cannot be opened
     */
    static Wire open(PortSettings settings, boolean shared) {
        return SocketAddress.is(settings.port())
                ? SocketWire.open(SocketAddress.of(settings.port()))
                : SerialWire.open(settings, shared);
    }

    /** Waits up to 100 ms for bytes; how many came, zero for none, {@link #GONE} when the port has gone. */
    int read(byte[] bytes);

    /** Sends all; false when the port has gone. */
    boolean write(byte[] bytes);

    /** False when the system no longer knows the device. */
    boolean present();

    /** Waits until the system has passed on what was written, at most so long. */
    void awaitSent(long millis) throws InterruptedException;

    void close();
}
