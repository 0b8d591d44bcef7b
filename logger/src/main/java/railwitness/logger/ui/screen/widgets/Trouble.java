package railwitness.logger.ui.screen.widgets;

import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import railwitness.logger.recording.store.Mistake;

/** What went wrong, in one line for the person. */
public final class Trouble {
    private Trouble() {}

    public static String words(Throwable e) {
        if (e instanceof UncheckedIOException io) {
            return words(io.getCause());
        }
        if (e instanceof NoSuchFileException missing) {
            return Words.of("trouble.missing", missing.getFile());
        }
        if (e instanceof AccessDeniedException denied) {
            return Words.of("trouble.denied", denied.getFile());
        }
        if (e instanceof FileAlreadyExistsException there) {
            return Words.of("trouble.exists", there.getFile());
        }
        if (e instanceof Error) {
            return Words.of("trouble.machine", Mistake.words(e));
        }
        String text = e.getMessage();
        return text == null || e instanceof NullPointerException || e instanceof IndexOutOfBoundsException
                ? mistake(e)
                : text.strip().replaceAll("\\s*\\R\\s*", "; ");
    }

    /** What nobody foresaw. */
    public static String mistake(Throwable e) {
        return Words.of("trouble.mistake", e.getClass().getSimpleName());
    }
}
