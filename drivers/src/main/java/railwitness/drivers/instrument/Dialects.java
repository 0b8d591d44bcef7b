package railwitness.drivers.instrument;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import railwitness.drivers.sheet.Sheet;

/** The dialects that are known, the most particular first. */
public final class Dialects {
    /** Names of those that come with the program. */
    public static final List<String> SHIPPED = List.of("remote-first", "channels", "scpi-1999");

    private final List<Dialect> dialects;

    private Dialects(List<Dialect> dialects) {
        this.dialects = dialects;
    }

    /** Those that come with the program. */
    public static Dialects shipped() {
        return new Dialects(SHIPPED.stream().map(Dialects::shipped).toList());
    }

    private static Dialect shipped(String name) {
        return Sheet.of(name + ".toml", textOf(name)).read(root -> DialectReader.read(name, root));
    }

    /** The file of a dialect that comes with the program, one of {@link #SHIPPED}. */
    public static String textOf(String name) {
        try (InputStream stream = Dialects.class.getResourceAsStream("dialects/" + name + ".toml")) {
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads a dialect of one's own from a file.
     *
     * @throws railwitness.drivers.sheet.SheetException with all its faults
     */
    public static Dialect of(Path file) {
        String name = file.getFileName().toString().replaceFirst("\\.toml$", "");
        return Sheet.of(file).read(root -> DialectReader.read(name, root));
    }

    /**
     * The dialect of this name.
     *
     * @throws IllegalArgumentException naming those that are known
     */
    public Dialect named(String name) {
        return dialects.stream()
                .filter(dialect -> dialect.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "unknown dialect '" + name + "'; known are " + String.join(", ", names())));
    }

    /** The first that knows this answer to {@code *IDN?}; the plain one knows all. */
    public Dialect forIdentity(String answer) {
        return dialects.stream()
                .filter(dialect -> dialect.identity().matcher(answer).matches())
                .findFirst()
                .orElseThrow();
    }

    public List<String> names() {
        return dialects.stream().map(Dialect::name).collect(Collectors.toList());
    }
}
