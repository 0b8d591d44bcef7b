package railwitness.safety.guardian;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.Arrays;
import railwitness.drivers.line.SocketAddress;

/**
 * A connection of the guardian's own to an instrument on the network, beside the program's. An instrument that takes one
 * connection only refuses it, and so refuses to be guarded: then the run is refused as well.
 */
final class SocketPort implements BytePort {
    private static final int CONNECT_MILLIS = 3000;

    private final Socket socket = new Socket();

    SocketPort(SocketAddress address) throws IOException {
        try {
            socket.connect(new InetSocketAddress(address.host(), address.port()), CONNECT_MILLIS);
            socket.setTcpNoDelay(true);
        } catch (IOException e) {
            socket.close();
            throw new IOException("it takes no second connection (" + e.getMessage() + ")", e);
        }
    }

    @Override
    public void write(byte[] bytes) throws IOException {
        socket.getOutputStream().write(bytes);
    }

    @Override
    public byte[] read() {
        try {
            InputStream in = socket.getInputStream();
            byte[] come = new byte[in.available()];
            int count = come.length == 0 ? 0 : in.read(come);
            return Arrays.copyOf(come, Math.max(0, count));
        } catch (IOException gone) {
            return new byte[0];
        }
    }

    @Override
    public void close() {
        try {
            socket.close();
        } catch (IOException gone) {
            // the process ends anyway
        }
    }
}
