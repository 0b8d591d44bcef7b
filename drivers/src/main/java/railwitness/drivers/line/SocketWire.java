package railwitness.drivers.line;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.ConnectException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import railwitness.drivers.line.LineException.Trouble;

/** A plain socket to an instrument that speaks SCPI on it. Small messages leave at once (no collecting of packets). */
final class SocketWire implements Wire {
    private static final int CONNECT_MILLIS = 3000;
    private static final int READ_MILLIS = 100;

    private final Socket socket;
    private final InputStream in;
    private final OutputStream out;

    private SocketWire(Socket socket) throws IOException {
        this.socket = socket;
        socket.setTcpNoDelay(true);
        socket.setKeepAlive(true);
        socket.setSoTimeout(READ_MILLIS);
        this.in = socket.getInputStream();
        this.out = socket.getOutputStream();
    }

    /** @throws LineException when nobody answers there */
    static SocketWire open(SocketAddress address) {
        String port = "tcp://" + address.host() + ":" + address.port();
        Socket socket = new Socket();
        try {
            socket.connect(new InetSocketAddress(address.host(), address.port()), CONNECT_MILLIS);
            return new SocketWire(socket);
        } catch (IOException e) {
            quietly(socket);
            throw new LineException(Trouble.NO_SUCH_PORT, port + ": " + why(e), "", "");
        }
    }

    private static String why(IOException e) {
        if (e instanceof UnknownHostException
                || e.getMessage() != null && e.getMessage().contains("nresolved")) {
            return "no such host; is its name right, and the network cable in?";
        }
        if (e instanceof SocketTimeoutException) {
            return "nothing answers there within 3 s; is the instrument on, and the network cable in?";
        }
        if (e instanceof ConnectException) {
            return "the instrument refuses the connection; is the socket switched on in its menu, is another program"
                    + " connected to it?";
        }
        return "cannot be reached: " + e.getMessage();
    }

    @Override
    public int read(byte[] bytes) {
        try {
            return in.read(bytes);
        } catch (SocketTimeoutException nothing) {
            return 0;
        } catch (IOException gone) {
            return GONE;
        }
    }

    @Override
    public boolean write(byte[] bytes) {
        try {
            out.write(bytes);
            return true;
        } catch (IOException gone) {
            return false;
        }
    }

    @Override
    public boolean present() {
        return !socket.isClosed();
    }

    /** What was written is sent by the system also after closing. */
    @Override
    public void awaitSent(long millis) {
        // nothing is thrown away by closing
    }

    @Override
    public void close() {
        quietly(socket);
    }

    private static void quietly(Socket socket) {
        try {
            socket.close();
        } catch (IOException gone) {
            // it is gone all the same
        }
    }
}
