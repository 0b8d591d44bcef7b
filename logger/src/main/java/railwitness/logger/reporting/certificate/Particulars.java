package railwitness.logger.reporting.certificate;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was stated for a certificate.
 *
 * @param stated by what it is; nothing blank in it
 */
public record Particulars(Map<Particular, String> stated) {
    /** Nothing stated. */
    public static final Particulars NONE = new Particulars(Map.of());

    public Particulars {
        Map<Particular, String> said = new EnumMap<>(Particular.class);
        stated.forEach((what, text) -> {
            if (!text.isBlank()) {
                said.put(what, text.strip());
            }
        });
        stated = Map.copyOf(said);
    }

    public Optional<String> of(Particular what) {
        return Optional.ofNullable(stated.get(what));
    }

    /** The text, or "not stated". */
    String words(Particular what) {
        return of(what).orElse("not stated");
    }

    Particulars with(Particular what, Optional<String> text) {
        Map<Particular, String> more = new EnumMap<>(Particular.class);
        more.putAll(stated);
        text.ifPresent(said -> more.put(what, said));
        return new Particulars(more);
    }
}
