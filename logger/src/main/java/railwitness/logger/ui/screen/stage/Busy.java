package railwitness.logger.ui.screen.stage;

import java.util.Optional;
import java.util.function.Consumer;

/** One slow work at a time of a stage, with its line. Used on the event thread alone. */
public final class Busy {
    private final WindowModel desk;
    private Optional<Work> now = Optional.empty();

    public Busy(WindowModel desk) {
        this.desk = desk;
    }

    /** Starts it; a failure is told to the person. */
    public <T> void go(String words, WindowModel.Working<T> task, Consumer<T> done) {
        go(words, task, done, desk::message);
    }

    /**
     * Starts it.
     *
     * @param words what is done
     * @param failed told why there is no outcome, in words
     */
    public <T> void go(String words, WindowModel.Working<T> task, Consumer<T> done, Consumer<String> failed) {
        desk.message("");
        Work[] mine = new Work[1];
        mine[0] = desk.work(
                words,
                task,
                outcome -> {
                    over(mine[0]);
                    done.accept(outcome);
                },
                why -> {
                    over(mine[0]);
                    failed.accept(why);
                });
        now = Optional.of(mine[0]);
    }

    private void over(Work work) {
        now = now.filter(one -> one != work);
    }

    /** What stands at the bottom while work goes on. */
    public Optional<StatusLine> line() {
        return now.map(Work::line);
    }
}
