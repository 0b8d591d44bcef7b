package railwitness.safety.guardian;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * What the guardian is to do, handed over on its standard input before the first beat: lines of text, bytes and ports
 * in hexadecimal digits, the last line {@code watch}.
 *
 * @param patience longest time without a beat, 100 ms to 60 s
 * @param supplies at least one
 */
public record GuardianTask(Duration patience, List<Supply> supplies, List<Load> loads) {
    /** The usual patience. */
    public static final Duration USUAL_PATIENCE = Duration.ofSeconds(1);

    private static final HexFormat HEX = HexFormat.of();

    /**
     * A supply's way.
     *
     * @param port the device as the system knows it
     * @param off ready-made bytes for off, beginning with a newline
     * @param ask ready-made bytes that ask whether the output is on; the answer 0 or OFF means off
     */
    public record Supply(String port, byte[] off, byte[] ask) {}

    /** A load's way: its port and the ready-made bytes that switch its input off. */
    public record Load(String port, byte[] off) {}

    public GuardianTask {
        supplies = List.copyOf(supplies);
        loads = List.copyOf(loads);
        if (patience.toMillis() < 100 || patience.toMillis() > 60_000) {
            throw new IllegalArgumentException("patience of the guardian must be 100 ms to 60 s, not " + patience);
        }
        if (supplies.isEmpty()) {
            throw new IllegalArgumentException("the guardian needs at least one supply to switch off");
        }
    }

    String text() {
        StringBuilder text = new StringBuilder("patience " + patience.toMillis() + "\n");
        for (Supply supply : supplies) {
            text.append("supply ").append(hex(supply.port())).append(' ');
            text.append(HEX.formatHex(supply.off()))
                    .append(' ')
                    .append(HEX.formatHex(supply.ask()))
                    .append('\n');
        }
        for (Load load : loads) {
            text.append("load ")
                    .append(hex(load.port()))
                    .append(' ')
                    .append(HEX.formatHex(load.off()))
                    .append('\n');
        }
        return text.append("watch\n").toString();
    }

    /** Reads up to and with the line {@code watch}, and not a byte more. */
    static GuardianTask read(InputStream in) throws IOException {
        Duration patience = USUAL_PATIENCE;
        List<Supply> supplies = new ArrayList<>();
        List<Load> loads = new ArrayList<>();
        for (String line = line(in); !line.equals("watch"); line = line(in)) {
            String[] words = line.split(" ");
            switch (words[0]) {
                case "patience" -> patience = Duration.ofMillis(Long.parseLong(words[1]));
                case "supply" -> supplies.add(new Supply(port(words), HEX.parseHex(words[2]), HEX.parseHex(words[3])));
                case "load" -> loads.add(new Load(port(words), HEX.parseHex(words[2])));
                default -> throw new IOException("unknown order: " + line);
            }
        }
        return new GuardianTask(patience, supplies, loads);
    }

    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int next = in.read(); next != '\n'; next = in.read()) {
            if (next < 0) {
                throw new IOException("the orders ended before 'watch'");
            }
            line.append((char) next);
        }
        return line.toString();
    }

    private static String hex(String text) {
        return HEX.formatHex(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String port(String[] words) {
        return new String(HEX.parseHex(words[1]), StandardCharsets.UTF_8);
    }
}
