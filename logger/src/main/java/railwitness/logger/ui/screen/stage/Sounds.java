package railwitness.logger.ui.screen.stage;

import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/**
 * What is sounded for whoever does not look: two even tones where a person has to act, a sweeping tone for a trip, as
 * IEC 60073 tells danger from attention (from memory). Off unless the person wants it; a computer without sound stays
 * silent.
 */
public final class Sounds {
    private static final String KEY = "sound";
    private static final String ON = "on";
    private static final float RATE = 16_000;
    private static final double LOUD = 0.5;

    private final Remembered remembered;

    Sounds(Remembered remembered) {
        this.remembered = remembered;
    }

    /** Whether anything is sounded. */
    public boolean on() {
        return remembered.get(KEY).equals(Optional.of(ON));
    }

    /** On when it was off, and the other way round; on is heard at once. */
    public void turn() {
        remembered.put(KEY, on() ? "off" : ON);
        asked();
    }

    /** Somebody has to act. */
    public void asked() {
        play(tones(0.18, 660, 880));
    }

    /** The output was switched off by the interlock. */
    public void tripped() {
        play(sweep(3, 500, 1200));
    }

    /** Even tones one after the other, hertz. */
    static byte[] tones(double secondsEach, double... hertz) {
        int each = (int) (secondsEach * RATE);
        byte[] sound = new byte[each * hertz.length];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = sample(2 * Math.PI * hertz[i / each] * i / RATE);
        }
        return sound;
    }

    /** A tone that rises once a second between two pitches, hertz. */
    static byte[] sweep(int seconds, double from, double to) {
        byte[] sound = new byte[(int) (seconds * RATE)];
        double phase = 0;
        for (int i = 0; i < sound.length; i++) {
            double share = i / RATE % 1;
            phase += 2 * Math.PI * (from + (to - from) * share) / RATE;
            sound[i] = sample(phase);
        }
        return sound;
    }

    private static byte sample(double phase) {
        return (byte) Math.round(Math.sin(phase) * LOUD * Byte.MAX_VALUE);
    }

    private void play(byte[] sound) {
        if (on()) {
            Thread thread = new Thread(() -> playNow(sound), "sound");
            thread.setDaemon(true);
            thread.start();
        }
    }

    private static void playNow(byte[] sound) {
        AudioFormat format = new AudioFormat(RATE, 8, 1, true, false);
        try (SourceDataLine line = AudioSystem.getSourceDataLine(format)) {
            line.open(format);
            line.start();
            line.write(sound, 0, sound.length);
            line.drain();
        } catch (LineUnavailableException | IllegalArgumentException silent) {
            // a computer without sound stays silent
        }
    }
}
