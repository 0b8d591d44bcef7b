package railwitness.logger.recording.store;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;

/**
 * Records until it is killed, or so many commits long, and says after each commit how many readings are safe.
 * Arguments: file, seed, commits (0: for ever).
 */
final class Victim {
    private Victim() {}

    public static void main(String[] arguments) {
        Random random = new Random(Long.parseLong(arguments[1]));
        int commits = Integer.parseInt(arguments[2]);
        BenchNoise noise = new BenchNoise(1);
        SessionWriter writer = SessionWriter.create(Path.of(arguments[0]), Heads.plain());
        long written = 0;
        for (int i = 0; commits == 0 || i < commits; i++) {
            int portion = random.nextInt(1500);
            for (int j = 0; j < portion; j++) {
                writer.reading(noise.next());
            }
            writer.event(0, "portion", "readings " + portion);
            writer.commit();
            written += portion;
            byte[] said = (written + "\n").getBytes(StandardCharsets.US_ASCII);
            System.out.write(said, 0, said.length);
            System.out.flush();
        }
        Runtime.getRuntime().halt(0);
    }
}
