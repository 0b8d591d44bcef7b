package railwitness.logger.ui.screen.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is heard says what has happened, and only to whoever wants to hear it. */
class SoundsTest {
    private static final double RATE = 16_000;

    @TempDir
    Path folder;

    /** Hertz, from the zero crossings of a stretch of it. */
    private static double pitch(byte[] sound, double fromSeconds, double toSeconds) {
        int from = (int) (fromSeconds * RATE);
        int to = (int) (toSeconds * RATE);
        int rising = 0;
        for (int i = from + 1; i < to; i++) {
            rising += sound[i - 1] < 0 && sound[i] >= 0 ? 1 : 0;
        }
        return rising / (toSeconds - fromSeconds);
    }

    @Test
    void aTripSweepsAndAPromptDoesNot() {
        byte[] trip = Sounds.sweep(3, 500, 1200);
        assertThat(pitch(trip, 1.0, 1.1)).isBetween(450.0, 620.0);
        assertThat(pitch(trip, 1.9, 2.0)).isBetween(1080.0, 1250.0);
        byte[] prompt = Sounds.tones(0.2, 660, 880);
        assertThat(pitch(prompt, 0.0, 0.2)).isBetween(640.0, 680.0);
        assertThat(pitch(prompt, 0.2, 0.4)).isBetween(860.0, 900.0);
    }

    @Test
    void nothingIsHeardUntilSomebodyWantsIt() {
        Sounds sounds = new Sounds(new Remembered(folder));
        assertThat(sounds.on()).isFalse();
        sounds.turn();
        assertThat(new Sounds(new Remembered(folder)).on()).isTrue();
        sounds.turn();
        assertThat(sounds.on()).isFalse();
    }
}
