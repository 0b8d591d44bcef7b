package railwitness.logger.ui.screen.readings;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import railwitness.drivers.reading.Channel;
import railwitness.logger.ui.screen.widgets.Trouble;

/** Reads pictures from the file on a thread of its own; of several wishes only the newest is read. */
final class Drawer {
    private final ExecutorService reader = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "reading for the screen");
        thread.setDaemon(true);
        return thread;
    });
    private final AtomicReference<Wish> newest = new AtomicReference<>();
    private final Consumer<String> failed;
    private Optional<OpenReadings> open = Optional.empty();

    /** What is to be read. */
    record Wish(Set<Channel> channels, Reach reach, int columns, Consumer<Map<Channel, DrawnChannel>> done) {}

    /** @param failed told why something could not be read, on the event thread */
    Drawer(Consumer<String> failed) {
        this.failed = failed;
    }

    /** Opens another file, and closes the one before. */
    void open(Path file, Consumer<OpenReadings.Facts> done) {
        newest.set(null);
        task(() -> {
            shut();
            OpenReadings opened = new OpenReadings(file);
            open = Optional.of(opened);
            OpenReadings.Facts facts = opened.facts();
            SwingUtilities.invokeLater(() -> done.accept(facts));
        });
    }

    void draw(Wish wish) {
        if (newest.getAndSet(wish) == null) {
            task(this::next);
        }
    }

    private void next() {
        Wish wish = newest.getAndSet(null);
        if (wish == null || open.isEmpty()) {
            return;
        }
        Map<Channel, DrawnChannel> drawn = open.get().draw(wish.channels(), wish.reach(), wish.columns());
        SwingUtilities.invokeLater(() -> wish.done().accept(drawn));
    }

    void close() {
        newest.set(null);
        task(this::shut);
    }

    private void shut() {
        open.ifPresent(OpenReadings::close);
        open = Optional.empty();
    }

    private void task(Runnable work) {
        reader.execute(() -> {
            try {
                work.run();
            } catch (RuntimeException e) {
                SwingUtilities.invokeLater(() -> failed.accept(Trouble.words(e)));
            }
        });
    }
}
