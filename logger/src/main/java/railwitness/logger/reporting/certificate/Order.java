package railwitness.logger.reporting.certificate;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;

/**
 * What kind of certificate is wanted.
 *
 * @param paper it is printed on
 * @param causes whether probable causes are printed
 * @param before session of the same unit that this one is the retest of
 * @param workshop who tested, with address; empty when not stated
 * @param customer whose unit it is; empty when not stated
 * @param issued when the certificate is made
 * @param whole work the chain of the session out, however long it takes
 */
public record Order(
        Paper paper,
        boolean causes,
        Optional<Path> before,
        Optional<String> workshop,
        Optional<String> customer,
        Instant issued,
        boolean whole) {

    /** With the chain of the session worked out only where that takes no time. */
    public Order(
            Paper paper,
            boolean causes,
            Optional<Path> before,
            Optional<String> workshop,
            Optional<String> customer,
            Instant issued) {
        this(paper, causes, before, workshop, customer, issued, false);
    }

    /** On A4, with nothing beside what the session holds. */
    public static Order plain(Instant issued) {
        return new Order(Paper.A4, false, Optional.empty(), Optional.empty(), Optional.empty(), issued);
    }
}
