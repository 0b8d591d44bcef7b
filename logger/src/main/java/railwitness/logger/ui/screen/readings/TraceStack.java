package railwitness.logger.ui.screen.readings;

import java.awt.Color;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.trace.StepSpan;
import railwitness.logger.ui.screen.trace.TraceModel;
import railwitness.logger.ui.screen.trace.TraceView;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/** The chosen channels, one trace below the other, with the time under them. */
final class TraceStack extends JPanel {
    private static final double NEARER = 0.5;
    private static final double LEAST_RANGE = 1e-6;

    private final transient List<TraceView> views = new ArrayList<>();
    private final TimeRuler ruler = new TimeRuler();
    private final transient Hand hand;
    private transient List<Channel> channels = List.of();
    private transient List<Double> notes = List.of();

    /** What a person does to the traces. */
    interface Hand {
        void zoom(double times, double about);

        void pan(double share);

        void point(double seconds);
    }

    TraceStack(Hand hand) {
        super(new MigLayout("insets 0, gap 0 10, fill, wrap 1", "[grow,fill]", "[grow,fill]"));
        this.hand = hand;
        setOpaque(false);
    }

    /** Puts up a trace for each of these. */
    void channels(Set<Channel> wanted) {
        channels = List.copyOf(wanted);
        views.clear();
        removeAll();
        for (Channel channel : channels) {
            TraceView view = new TraceView("readings " + channel);
            Mouse mouse = new Mouse(view);
            view.addMouseListener(mouse);
            view.addMouseMotionListener(mouse);
            view.addMouseWheelListener(mouse);
            views.add(view);
            add(view, "grow, push, hmin 80");
        }
        add(ruler, "growx, pushx 1, hmin pref, hmax pref");
        revalidate();
        repaint();
    }

    /** When remarks were written, s of the session. */
    void notes(List<Double> seconds) {
        notes = List.copyOf(seconds);
    }

    /** Columns of pixels; all traces have as many. */
    int columns() {
        return views.isEmpty() ? 1 : views.get(0).columns();
    }

    void show(Reach reach, List<StepSpan> steps, OptionalDouble cursor, Map<Channel, DrawnChannel> drawn) {
        ruler.show(reach);
        for (int i = 0; i < channels.size(); i++) {
            views.get(i).show(model(i, reach, steps, cursor, Optional.ofNullable(drawn.get(channels.get(i)))));
        }
    }

    private TraceModel model(
            int place, Reach reach, List<StepSpan> steps, OptionalDouble cursor, Optional<DrawnChannel> drawn) {
        ChannelWords words = ChannelWords.of(channels.get(place));
        List<StepSpan> seen = steps.stream()
                .filter(step -> step.toSeconds() > reach.from() && step.fromSeconds() < reach.to())
                .toList();
        return new TraceModel(
                words.name(),
                cursor.isPresent()
                        ? drawn.map(one -> at(one, words, cursor.getAsDouble())).orElse("")
                        : words.unit(),
                drawn.filter(one -> one.count() > 0)
                        .map(one -> range(one, words))
                        .orElse(Words.of("readings.none")),
                new TraceModel.Stroke(colour(place), dash(place), LEAST_RANGE, true),
                reach.from(),
                reach.to(),
                seen,
                List.of(),
                cursor,
                notes,
                drawn.map(one -> one.in(words.scale())));
    }

    /** The reading under the cursor, or from where to where they are where one pixel holds many. */
    private static String at(DrawnChannel drawn, ChannelWords words, double seconds) {
        OptionalInt column = drawn.nearest(seconds);
        if (column.isEmpty()) {
            return "";
        }
        int i = column.getAsInt();
        String low = Numbers.fixed(drawn.envelope().lowest()[i] * words.scale(), words.places());
        String high = Numbers.fixed(drawn.envelope().highest()[i] * words.scale(), words.places());
        long many = drawn.envelope().measured()[i];
        return many == 1
                ? Words.of("readings.one", low, words.unit())
                : Words.of("readings.many", low, high, words.unit(), many);
    }

    private static String range(DrawnChannel drawn, ChannelWords words) {
        return Words.of(
                "readings.range",
                Numbers.fixed(drawn.lowest() * words.scale(), words.places()),
                Numbers.fixed(drawn.highest() * words.scale(), words.places()),
                words.unit());
    }

    private Color colour(int place) {
        Palette palette = Look.palette();
        OptionalInt rail = rail(channels.get(place));
        return rail.isPresent() ? palette.rail(rail.getAsInt()) : palette.input();
    }

    private int dash(int place) {
        return rail(channels.get(place)).orElse(0) / Look.palette().rails().size() * 6;
    }

    /** Which rail, by the order of the voltages that are shown; empty for what belongs to no rail. */
    private OptionalInt rail(Channel channel) {
        List<String> rails = channels.stream()
                .filter(one -> one.quantity() != Quantity.TEMPERATURE)
                .map(Channel::node)
                .filter(node -> !node.equals("input") && !node.equals("supply"))
                .distinct()
                .toList();
        return IntStream.range(0, rails.size())
                .filter(i -> rails.get(i).equals(channel.node()))
                .findFirst();
    }

    /** The wheel zooms, dragging moves, pointing reads. */
    private final class Mouse extends MouseAdapter {
        private final TraceView view;
        private int held;

        Mouse(TraceView view) {
            this.view = view;
        }

        @Override
        public void mouseWheelMoved(MouseWheelEvent e) {
            hand.zoom(e.getWheelRotation() < 0 ? NEARER : 1 / NEARER, view.secondsAt(e.getX()));
        }

        @Override
        public void mousePressed(MouseEvent e) {
            held = e.getX();
        }

        @Override
        public void mouseDragged(MouseEvent e) {
            hand.pan((held - e.getX()) / (double) view.columns());
            held = e.getX();
        }

        @Override
        public void mouseMoved(MouseEvent e) {
            hand.point(view.secondsAt(e.getX()));
        }
    }
}
