package railwitness.logger.recording.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A photograph that belongs to a note: a file beside the session, whose digest stands in the note. */
public final class Photograph {
    private static final Pattern AT_THE_END =
            Pattern.compile("(?si)(.*?)\\s*(?:file://)?((?:/|[A-Za-z]:[/\\\\])[^\\n]*\\.(?:jpe?g|png|heic|webp))\\s*");

    private Photograph() {}

    /**
     * The note as it is to be kept. Where it ends with the whole path of a picture (.jpg, .jpeg, .png, .heic, .webp), that is
     * copied beside the session under the session's name, and its new name and digest (SHA-256) stand in the note instead.
     * Reads and writes files.
     *
     * @param session file of the session, which need not be there
     * @throws StoreException when the picture cannot be read or its copy not be written; nothing of it is left then
     */
    public static String kept(String note, Path session) {
        Matcher found = AT_THE_END.matcher(note);
        if (!found.matches()) {
            return note;
        }
        String words = found.group(1).strip();
        try {
            Path picture = Path.of(found.group(2));
            Path copy = free(session, ending(picture));
            String digest = copied(picture, copy);
            return (words.isEmpty() ? "" : words + " ") + "[photograph " + copy.getFileName() + ", SHA-256 " + digest
                    + "]";
        } catch (IOException | InvalidPathException e) {
            throw new StoreException(found.group(2) + ": this photograph cannot be kept (" + e.getMessage() + ")", e);
        }
    }

    private static String ending(Path picture) {
        String name = picture.getFileName().toString();
        return name.substring(name.lastIndexOf('.')).toLowerCase(java.util.Locale.ROOT);
    }

    private static Path free(Path session, String ending) {
        String stem = session.getFileName().toString().replaceFirst("\\.session$", "");
        int number = 1;
        Path copy;
        do {
            copy = session.resolveSibling(stem + "-photo-" + number++ + ending);
        } while (Files.exists(copy));
        return copy;
    }

    private static String copied(Path picture, Path copy) throws IOException {
        MessageDigest sha;
        try {
            sha = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
        try (InputStream in = new DigestInputStream(Files.newInputStream(picture), sha)) {
            Files.copy(in, copy);
        } catch (IOException e) {
            Files.deleteIfExists(copy);
            throw e;
        }
        return HexFormat.of().formatHex(sha.digest());
    }
}
