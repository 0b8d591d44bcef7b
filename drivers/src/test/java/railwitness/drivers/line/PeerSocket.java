package railwitness.drivers.line;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/** Lets a peer be reached over a plain socket on this computer, as an instrument on the network is. */
final class PeerSocket implements LineTest.Far {
    private final ServerSocket server;
    private final Set<Socket> clients = ConcurrentHashMap.newKeySet();
    private final Peer peer;
    private final String terminator;

    PeerSocket(Peer peer, String terminator) {
        this.peer = peer;
        this.terminator = terminator;
        try {
            server = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        start("far end", this::accept);
    }

    private interface Work {
        void run() throws IOException, InterruptedException;
    }

    private static void start(String name, Work work) {
        Thread thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (IOException | InterruptedException ended) {
                        // the test is over, or the client has gone
                    }
                },
                name);
        thread.setDaemon(true);
        thread.start();
    }

    private void accept() throws IOException {
        while (true) {
            Socket client = server.accept();
            client.setTcpNoDelay(true);
            clients.add(client);
            start("far end of a client", () -> serve(client));
        }
    }

    private void serve(Socket client) throws IOException, InterruptedException {
        InputStream in = client.getInputStream();
        StringBuilder message = new StringBuilder();
        for (int b = in.read(); b >= 0; b = in.read()) {
            if (b != '\n' && b != '\r') {
                message.append((char) b);
            } else if (message.length() > 0) {
                String text = message.toString();
                message.setLength(0);
                answer(text, client.getOutputStream());
            }
        }
    }

    private void answer(String text, OutputStream out) throws IOException, InterruptedException {
        Answer answer = peer.hear(text);
        TimeUnit.NANOSECONDS.sleep(answer.complete().toNanos());
        Optional<byte[]> reply = answer.reply();
        if (reply.isPresent()) {
            out.write(reply.get());
            out.write(terminator.getBytes(StandardCharsets.US_ASCII));
        }
    }

    @Override
    public String device() {
        return "tcp://127.0.0.1:" + server.getLocalPort();
    }

    @Override
    public void close() {
        try {
            server.close();
            for (Socket client : clients) {
                client.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
