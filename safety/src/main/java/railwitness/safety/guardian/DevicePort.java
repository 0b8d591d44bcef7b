package railwitness.safety.guardian;

import java.io.FileInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * A serial port as the file the system shows it as, opened beside the program that already holds it: baud and the rest
 * are as that program set them. It is read only when something has come: a thread that hangs in a read would hold the
 * port beyond its closing, and the end of the process back by 300 ms. Reading has a descriptor of its own, because one
 * channel's read and write shut each other out.
 */
final class DevicePort implements BytePort {
    private final FileChannel out;
    private final FileInputStream in;

    DevicePort(String port) throws IOException {
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

    @Override
    public byte[] read() {
        try {
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
            out.close();
            in.close();
        } catch (IOException gone) {
            // the process ends anyway
        }
    }
}
