package railwitness.logger.screen.trace;

import java.awt.BorderLayout;
import java.awt.Dimension;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import railwitness.logger.screen.theme.Look;

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
