package railwitness.logger.ui.screen.trace;

import java.awt.BorderLayout;
import java.awt.Dimension;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import railwitness.logger.ui.screen.theme.Look;

/** One trace with its title above it. */
public final class TraceView extends JPanel {
    private final TraceTitle title = new TraceTitle();
    private final TracePlot plot = new TracePlot();

    public TraceView(String name) {
        super(new BorderLayout());
        setName(name);
        setOpaque(false);
        add(title, BorderLayout.NORTH);
        add(plot, BorderLayout.CENTER);
    }

    /** Shows another moment. */
    public void show(TraceModel next) {
        getAccessibleContext().setAccessibleName(next.title());
        getAccessibleContext().setAccessibleDescription(next.value() + ", " + next.remark());
        title.show(next);
        plot.show(next);
    }

    public TraceModel model() {
        return plot.model();
    }

    /** Columns of pixels in which readings are drawn. */
    public int columns() {
        return plot.columns();
    }

    /** Which moment stands at this place of the view, s of the session. */
    public double secondsAt(int x) {
        return plot.secondsAt(x - plot.getX());
    }

    /** Where its plot begins and ends, for an axis under it. */
    public static int left() {
        return Look.px(TracePlot.LEFT);
    }

    /** Air at the right of the plot. */
    public static int right() {
        return Look.px(TracePlot.INSET) + 1;
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(Look.px(420), Look.px(190));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(Look.px(200), Look.px(90));
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJPanel() {
                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.CANVAS;
                }
            };
        }
        return accessibleContext;
    }
}
