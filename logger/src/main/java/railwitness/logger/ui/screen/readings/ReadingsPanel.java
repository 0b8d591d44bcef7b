package railwitness.logger.ui.screen.readings;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import railwitness.drivers.reading.Channel;
import railwitness.drivers.reading.Quantity;
import railwitness.logger.ui.screen.theme.Look;
import railwitness.logger.ui.screen.theme.Palette;
import railwitness.logger.ui.screen.theme.Type;
import railwitness.logger.ui.screen.widgets.Keys;
import railwitness.logger.ui.screen.widgets.Label;
import railwitness.logger.ui.screen.widgets.Note;
import railwitness.logger.ui.screen.widgets.RuledSheet;
import railwitness.logger.ui.screen.widgets.Scroll;
import railwitness.logger.ui.screen.widgets.Sheet;
import railwitness.logger.ui.screen.widgets.Words;

/** All readings of a session: channels at the left, their traces at the right, from the whole of it to the single reading. */
public final class ReadingsPanel {
    private static final double NEARER = 0.5;
    private static final double STEP = 0.125;
    private static final int MOST_CHOSEN = 4;

    private final JPanel face = new JPanel(new MigLayout("insets 0, gap 0, fill", "[grow 38,fill][grow 62,fill]"));
    private final RuledSheet list = new RuledSheet("channels", ChannelRows.columns());
    private final Label title = Label.of("", Type.TITLE);
    private final Label span = Label.muted("", Type.TEXT);
    private final TraceStack traces = new TraceStack(new OwnHand());
    private final WholeStrip strip = new WholeStrip(this::goTo);
    private final Drawer drawer;
    private final Set<Channel> chosen = new LinkedHashSet<>();
    private OpenReadings.Facts facts = new OpenReadings.Facts(1, List.of(), List.of(), List.of());
    private Map<Channel, DrawnChannel> drawn = Map.of();
    private Reach reach = Reach.all(1);
    private Optional<Reach> drawnFor = Optional.empty();
    private Palette shownIn;
    private OptionalDouble cursor = OptionalDouble.empty();

    /** @param failed told why a file could not be read */
    public ReadingsPanel(java.util.function.Consumer<String> failed) {
        this.drawer = new Drawer(failed);
        span.setName("readings span");
        list.onChosen(this::toggle);
        face.add(left(), "grow, push, w 38%!");
        face.add(right(), "grow, push, w 62%!");
        Keys.within(face, "PLUS", () -> zoom(NEARER));
        Keys.within(face, "shift EQUALS", () -> zoom(NEARER));
        Keys.within(face, "EQUALS", () -> zoom(NEARER));
        Keys.within(face, "ADD", () -> zoom(NEARER));
        Keys.within(face, "MINUS", () -> zoom(1 / NEARER));
        Keys.within(face, "SUBTRACT", () -> zoom(1 / NEARER));
        Keys.within(face, "LEFT", () -> reach(reach.moved(-STEP)));
        Keys.within(face, "RIGHT", () -> reach(reach.moved(STEP)));
        Keys.within(face, "0", () -> reach(Reach.all(facts.whole())));
        Keys.within(face, "shift LEFT", () -> cursor(-1));
        Keys.within(face, "shift RIGHT", () -> cursor(1));
        face.addComponentListener(new java.awt.event.ComponentAdapter() {
            @Override
            public void componentResized(java.awt.event.ComponentEvent e) {
                draw();
            }
        });
    }

    private JComponent left() {
        Sheet left = new Sheet(
                new MigLayout("insets 14 20 10 20, gap 0, fill, wrap 1", "[grow,fill]", "[][]12[grow,fill][]"),
                Palette::sheet,
                Sheet.Edge.RIGHT);
        left.add(title, "wmin 0");
        left.add(span, "wmin 0");
        left.add(Scroll.of(list), "grow, push");
        left.add(Note.muted(Words.of("readings.keys"), Type.CAPTION), "growx, wmin 60");
        return left;
    }

    private JComponent right() {
        Sheet right = new Sheet(
                new MigLayout("insets 14 18 10 18, gap 0 8, fill, wrap 1", "[grow,fill]", "[grow,fill][]"),
                Palette::paper);
        right.add(traces, "grow, push, hmin 100");
        right.add(strip, "growx, hmin pref");
        return right;
    }

    public JComponent face() {
        return face;
    }

    /** Opens a session's readings, all of them at first. */
    public void open(Path file, String heading) {
        title.setText(heading);
        span.setText(Words.of("readings.opening"));
        chosen.clear();
        drawn = Map.of();
        drawnFor = Optional.empty();
        drawer.open(file, found -> {
            facts = found;
            reach = Reach.all(found.whole());
            cursor = OptionalDouble.empty();
            chosen.addAll(usual(found.channels()));
            traces.channels(chosen);
            face.validate();
            show();
            draw();
        });
    }

    public void focus() {
        list.requestFocusInWindow();
    }

    /** Closes the file. */
    public void close() {
        drawer.close();
    }

    /** Rails and input current first; where there are none, whatever comes first. */
    private static List<Channel> usual(List<Channel> channels) {
        List<Channel> rails = channels.stream()
                .filter(one -> one.quantity() == Quantity.VOLTAGE)
                .filter(one -> !one.node().equals("supply") && !one.node().equals("input"))
                .toList();
        Optional<Channel> current = channels.stream()
                .filter(one -> one.quantity() == Quantity.CURRENT)
                .filter(one -> one.node().equals("input") || one.node().equals("supply"))
                .reduce((first, second) -> first.node().equals("input") ? first : second);
        Set<Channel> all = new LinkedHashSet<>(rails.subList(0, Math.min(MOST_CHOSEN - 1, rails.size())));
        current.ifPresent(all::add);
        return all.isEmpty() ? channels.subList(0, Math.min(1, channels.size())) : List.copyOf(all);
    }

    private void toggle(int row) {
        Channel channel = facts.channels().get(row);
        boolean shown = chosen.contains(channel);
        if (shown && chosen.size() > 1) {
            chosen.remove(channel);
        } else if (!shown) {
            if (chosen.size() == MOST_CHOSEN) {
                chosen.remove(chosen.iterator().next());
            }
            chosen.add(channel);
        }
        traces.channels(chosen);
        face.validate();
        show();
        draw();
    }

    private void goTo(double seconds) {
        reach(reach.around(seconds));
    }

    private void zoom(double times) {
        reach(reach.zoomed(times, cursor.orElse(reach.middle())));
    }

    private void cursor(int columns) {
        double at = cursor.orElse(reach.middle()) + columns * reach.length() / traces.columns();
        cursor = OptionalDouble.of(Math.max(reach.from(), Math.min(reach.to(), at)));
        show();
    }

    private void reach(Reach wanted) {
        if (!wanted.equals(reach)) {
            reach = wanted;
            if (cursor.isPresent() && (cursor.getAsDouble() < reach.from() || cursor.getAsDouble() > reach.to())) {
                cursor = OptionalDouble.empty();
            }
            show();
            draw();
        }
    }

    /** After another theme was installed everything is shown in its colours. */
    public void moment() {
        if (shownIn != Look.palette()) {
            show();
        }
    }

    /** What is known is shown at once, even if it was read for another zoom. */
    private void show() {
        shownIn = Look.palette();
        list.rows(ChannelRows.of(facts.channels(), chosen, drawn));
        traces.notes(facts.notes());
        traces.show(reach, facts.steps(), cursor, drawn);
        strip.show(facts.steps());
        strip.show(reach);
        int places = Elapsed.places(reach.length() / 100);
        span.setText(Words.of("readings.span", Elapsed.of(reach.from(), places), Elapsed.of(reach.to(), places)));
    }

    private void draw() {
        if (chosen.isEmpty() || traces.columns() < 2) {
            return;
        }
        Reach wanted = reach;
        Set<Channel> channels = new LinkedHashSet<>(chosen);
        drawer.draw(new Drawer.Wish(channels, wanted, traces.columns(), found -> {
            if (wanted.equals(reach)) {
                drawn = new LinkedHashMap<>(found);
                drawnFor = Optional.of(wanted);
                show();
            }
        }));
    }

    /** Whether what is seen was read for just this stretch. */
    public boolean upToDate() {
        return drawnFor.equals(Optional.of(reach));
    }

    /** Length of what is seen, s. */
    public double seconds() {
        return reach.length();
    }

    private final class OwnHand implements TraceStack.Hand {
        @Override
        public void zoom(double times, double about) {
            reach(reach.zoomed(times, about));
        }

        @Override
        public void pan(double share) {
            reach(reach.moved(share));
        }

        @Override
        public void point(double seconds) {
            cursor = OptionalDouble.of(seconds);
            show();
        }
    }
}
