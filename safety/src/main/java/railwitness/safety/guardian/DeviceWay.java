package railwitness.safety.guardian;

import java.io.ByteArrayOutputStream;
import java.io.FileInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A serial port as the file the system shows it as, opened beside the program that already holds it: baud and the rest
 * are as that program set them. A thread reads, because such a read cannot be given a time.
 */
final class DeviceWay implements Way {
    private final FileChannel out;
    private final FileInputStream in;
    private final ByteArrayOutputStream come = new ByteArrayOutputStream();
    private boolean reading;

    DeviceWay(String port) throws IOException {
        Path device = Path.of(port);
        if (!Files.exists(device) || Files.isRegularFile(device)) {
            throw new IOException("there is no such device");
        }
        out = FileChannel.open(device, StandardOpenOption.WRITE);
        in = new FileInputStream(device.toFile());
    }

    @Override
    public void write(byte[] bytes) throws IOException {
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        while (rest.hasRemaining()) {
            out.write(rest);
        }
    }

    /** Reading begins with the first call, so that nothing is taken from the program while it lives. */
    @Override
    public byte[] read() {
        synchronized (come) {
            if (!reading) {
                reading = true;
                Thread reader = new Thread(this::receive, "answers");
                reader.setDaemon(true);
                reader.start();
            }
            byte[] bytes = come.toByteArray();
            come.reset();
            return bytes;
        }
    }

    private void receive() {
        byte[] some = new byte[256];
        try {
            for (int count = in.read(some); count >= 0; count = in.read(some)) {
                synchronized (come) {
                    come.write(some, 0, count);
                }
            }
        } catch (IOException gone) {
            // closed, or the device went away: there is nothing more to hear
        }
    }

    @Override
    public void close() {
        try {
            out.close();
            in.close();
        } catch (IOException gone) {
            // the process ends anyway
        }
    }
}
