package railwitness.logger.ui.screen.widgets;

import java.awt.Graphics;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.logger.ui.screen.theme.Look;

/** Something that is wrong, with a mark at its left; the words say the same. */
public final class Mark extends JPanel {
    public Mark() {
        super(new MigLayout("insets 4 16 4 4, gap 0 4, wrap 1, fillx", "[grow,fill]"));
        setOpaque(false);
    }

    @Override
    protected void paintComponent(Graphics g) {
        g.setColor(Look.palette().fault());
        g.fillRect(0, 0, Look.px(4), getHeight());
    }
}
