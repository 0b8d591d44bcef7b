package railwitness.logger.reporting.certificate;

import java.awt.Color;

/** The few colours of the paper; all text keeps at least 4.5 : 1 on white. */
final class Tone {
    static final Color INK = new Color(0x1D2329);
    static final Color MUTED = new Color(0x59636E);
    static final Color FAULT = new Color(0xB3261E);
    static final Color RULE = new Color(0xDCD8CE);
    static final Color STRONG_RULE = new Color(0x8E8A80);
    static final Color MARK = new Color(0xEEEEEE);

    private Tone() {}
}
