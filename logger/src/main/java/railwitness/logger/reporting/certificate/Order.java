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
 * @param stated what people stated beside it
 * @param issued when the certificate is made
 * @param whole work the chain of the session out, however long it takes
 * @param folder where earlier issues of it lie; empty where it is the first
 * @param letterhead the workshop's own
 */
public record Order(
        Paper paper,
        boolean causes,
        Optional<Path> before,
        Particulars stated,
        Instant issued,
        boolean whole,
        Optional<Path> folder,
        Optional<Letterhead> letterhead) {

    /** With the chain of the session worked out only where that takes no time. */
    public Order(
            Paper paper,
            boolean causes,
            Optional<Path> before,
            Optional<String> workshop,
            Optional<String> customer,
            Instant issued) {
        this(
                paper,
                causes,
                before,
                Particulars.NONE.with(Particular.WORKSHOP, workshop).with(Particular.CUSTOMER, customer),
                issued,
                false,
                Optional.empty(),
                Optional.empty());
    }

    /** On A4, with nothing beside what the session holds. */
    public static Order plain(Instant issued) {
        return new Order(Paper.A4, false, Optional.empty(), Optional.empty(), Optional.empty(), issued);
    }

    /** With other statements. */
    public Order stating(Particulars wanted) {
        return new Order(paper, causes, before, wanted, issued, whole, folder, letterhead);
    }

    /** As the next issue after those in a folder. */
    public Order after(Path earlierIssues) {
        return new Order(paper, causes, before, stated, issued, whole, Optional.of(earlierIssues), letterhead);
    }

    /** Under a workshop's own head. */
    public Order under(Letterhead head) {
        return new Order(paper, causes, before, stated, issued, whole, folder, Optional.of(head));
    }
}
