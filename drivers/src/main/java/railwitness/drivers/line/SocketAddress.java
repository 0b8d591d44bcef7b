package railwitness.drivers.line;

import java.net.URI;

/**
 * Where an instrument is reached over the network, written {@code tcp://host:port}. Without a port it is 5025, which is
 * registered with IANA for SCPI over a plain socket (scpi-raw).
 *
 * @param host name or address
 * @param port 1 to 65535
 */
public record SocketAddress(String host, int port) {
    public static final int SCPI_RAW = 5025;

    private static final String SCHEME = "tcp://";

    /** Whether the port of a bench sheet means a socket. */
    public static boolean is(String port) {
        return port.startsWith(SCHEME);
    }

    /** @throws LineException when it names no host or no port that can be */
    public static SocketAddress of(String port) {
        try {
            URI uri = URI.create(port);
            int number = uri.getPort() < 0 ? SCPI_RAW : uri.getPort();
            boolean bare = uri.getPath().isEmpty() || uri.getPath().equals("/");
            if (uri.getHost() != null && bare && number >= 1 && number <= 65_535) {
                return new SocketAddress(uri.getHost(), number);
            }
        } catch (IllegalArgumentException e) {
            // said below
        }
        throw new LineException(
                LineException.Trouble.NO_SUCH_PORT,
                port + ": not an address; write it like tcp://192.168.1.20:5025",
                "",
                "");
    }
}
