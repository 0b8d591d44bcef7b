package railwitness.drivers.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** What is no sheet is refused before anything is made of it: foreign files, endless ones, and texts too large or deep. */
final class SheetFile {
    /** Largest sheet, in bytes of a file and in characters of a text; ours have some thousand. */
    static final int MOST = 1 << 16;
    /** Tables and lists in one another, and parts of a key. */
    private static final int DEEPEST = 20;
    /** Longest piece of it; the parser takes very long for long strings. */
    private static final int LONGEST = 4096;

    private SheetFile() {}

    /** @throws SheetException when the file is no text of a sheet's size */
    static String text(Path path) {
        byte[] bytes;
        try {
            if (Files.exists(path) && !Files.isRegularFile(path)) {
                throw fault(path, "is a folder, a pipe or a device; name a file");
            }
            try (InputStream in = Files.newInputStream(path)) {
                bytes = in.readNBytes(MOST + 1);
            }
        } catch (IOException e) {
            throw fault(path, "cannot be read; is the name right, and may you read it?");
        }
        if (bytes.length > MOST) {
            throw fault(path, "is larger than " + MOST / 1024 + " kB, and no sheet is; name another file");
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            if (text.indexOf('\0') < 0) {
                return text;
            }
        } catch (CharacterCodingException e) {
            // said below
        }
        throw fault(path, "is not a text file (UTF-8); save it as text in UTF-8");
    }

    private static SheetException fault(Path path, String why) {
        return new SheetException(List.of(new SheetFault(path.toString(), 1, why)));
    }

    /** What makes a text too much for the parser; empty where nothing does. */
    static Optional<SheetFault> tooMuch(String file, String text) {
        if (text.length() > MOST) {
            return Optional.of(new SheetFault(file, 1, "is larger than " + MOST / 1024 + " kB, and no sheet is"));
        }
        OptionalInt at = tooDeep(text);
        return at.isEmpty()
                ? Optional.empty()
                : Optional.of(new SheetFault(
                        file,
                        1
                                + (int) text.substring(0, at.getAsInt())
                                        .chars()
                                        .filter(c -> c == '\n')
                                        .count(),
                        "has more than " + DEEPEST
                                + " tables, lists or parts of a key in one another, or a text of more than " + LONGEST
                                + " characters; no sheet has"));
    }

    private static OptionalInt tooDeep(String text) {
        int open = 0;
        int dots = 0;
        for (TomlToken token : TomlLexer.tokens(text)) {
            open += "[{".indexOf(token.kind()) >= 0 ? 1 : "]}".indexOf(token.kind()) >= 0 ? -1 : 0;
            dots = ".w\" ".indexOf(token.kind()) < 0 ? 0 : dots + (token.kind() == '.' ? 1 : 0);
            open = Math.max(0, open);
            boolean tooLong = token.kind() != TomlToken.COMMENT && token.to() - token.from() > LONGEST;
            if (open > DEEPEST || dots > DEEPEST || tooLong) {
                return OptionalInt.of(token.from());
            }
        }
        return OptionalInt.empty();
    }
}
