package railwitness.logger.reporting.certificate;

import java.awt.Color;

/** The few colours of the paper; all text keeps at least 4.5 : 1 on white. */
public final class Tone {
    public static final Color INK = new Color(0x1D2329);
    public static final Color MUTED = new Color(0x59636E);
    public static final Color FAULT = new Color(0xB3261E);
    public static final Color RULE = new Color(0xDCD8CE);
    public static final Color STRONG_RULE = new Color(0x8E8A80);
    public static final Color MARK = new Color(0xEEEEEE);

    private Tone() {}
}
