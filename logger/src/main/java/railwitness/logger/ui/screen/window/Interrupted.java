package railwitness.logger.ui.screen.window;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.SessionNames;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.Numbers;
import railwitness.logger.ui.screen.widgets.Words;

/**
 * Sessions whose recording broke off, offered when the window opens: each once, the latest first, a few at one start.
 * That one was answered is remembered beside the sessions; the session itself is not touched.
 */
final class Interrupted {
    private static final int MOST_AT_ONE_START = 3;
    private static final String ANSWERED = "answered.";

    private final WindowModel desk;
    private final Asker asker;
    private final Runnable opened;

    /** One of them. */
    private record Broken(Path file, SessionHead head) {
        String key() {
            return ANSWERED + head.id();
        }

        String question() {
            String serial = head.unitSerial().isEmpty() ? "" : " " + head.unitSerial();
            String date = Numbers.moment(head.startedWall(), head.zone());
            return Words.of("interrupted.question", head.unitName() + serial, date);
        }
    }

    /** @param opened told when a session was opened */
    Interrupted(WindowModel desk, Asker asker, Runnable opened) {
        this.desk = desk;
        this.asker = asker;
        this.opened = opened;
    }

    /**
     * Looks for them behind the desk and asks.
     *
     * @param except already on its way to be looked at
     */
    void offer(Optional<Path> except) {
        Path folder = desk.folder();
        desk.work(
                () -> in(folder).stream()
                        .filter(one -> desk.remembered().get(one.key()).isEmpty())
                        .filter(one -> except.map(Path::toAbsolutePath)
                                .filter(one.file().toAbsolutePath()::equals)
                                .isEmpty())
                        .limit(MOST_AT_ONE_START)
                        .toList(),
                found -> {
                    if (!desk.running()) {
                        found.forEach(this::ask);
                    }
                },
                desk::message);
    }

    private void ask(Broken one) {
        asker.ask(new Question(
                "interrupted " + one.head().id(),
                one.question(),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("interrupted.open"), typed -> {
                            answered(one);
                            desk.open(one.file(), opened);
                        }),
                        new Question.Answer(Words.of("interrupted.later"), typed -> answered(one)))));
    }

    private void answered(Broken one) {
        desk.work(
                () -> {
                    desk.remembered().put(one.key(), "yes");
                    return one;
                },
                done -> {},
                desk::message);
    }

    private static List<Broken> in(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(SessionNames.ENDING))
                    .flatMap(file -> brokeOff(file).stream())
                    .sorted(Comparator.comparing((Broken one) -> one.head().startedWall())
                            .reversed())
                    .toList();
        }
    }

    private static Optional<Broken> brokeOff(Path file) {
        try (SessionFile session = SessionFile.open(file)) {
            return session.state() == SessionState.INTERRUPTED
                    ? Optional.of(new Broken(file, session.head()))
                    : Optional.empty();
        } catch (StoreException e) {
            return Optional.empty();
        }
    }
}
