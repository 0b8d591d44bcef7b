package railwitness.logger.ui.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.reporting.certificate.Certificate;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.Paper;

/** The paper that goes back with the unit. */
@Command(
        name = "certificate",
        mixinStandardHelpOptions = true,
        description = {
            "Makes the test certificate of a session as a PDF.",
            "The first page sums up; the pages behind it have every figure with its uncertainty, the "
                    + "method, the instruments and what happened. A file that is there already is replaced only "
                    + "when it is a certificate of the same session."
        },
        footer = {"", "Example: railwitness certificate 0412.session --out 0412.pdf --before 0412-found.session"})
final class CertificateCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "SESSION", description = "a session file that has ended")
    private Path session;

    @Option(names = "--out", paramLabel = "PDF", required = true, description = "file to make")
    private Path out;

    @Option(names = "--paper", paramLabel = "a4|letter", description = "sheet to print on (default a4)")
    private Sheet paper = Sheet.a4;

    @Option(names = "--causes", description = "Print probable causes too.")
    private boolean causes;

    @Option(names = "--before", paramLabel = "SESSION", description = "earlier session of the same unit to cite")
    private Path before;

    @Option(names = "--workshop", paramLabel = "TEXT", description = "who tested, with address")
    private String workshop;

    @Option(names = "--customer", paramLabel = "TEXT", description = "whose unit it is")
    private String customer;

    @Option(names = "--whole", description = "Check the chain of a long session too, however long that takes.")
    private boolean whole;

    enum Sheet {
        a4,
        letter
    }

    @Override
    public Integer call() {
        Certificate certificate = Certificate.of(
                session,
                new Order(
                        paper == Sheet.a4 ? Paper.A4 : Paper.LETTER,
                        causes,
                        Optional.ofNullable(before),
                        Optional.ofNullable(workshop),
                        Optional.ofNullable(customer),
                        Instant.now(),
                        whole));
        certificate.writeTo(out);
        spec.commandLine().getOut().println(out + ": " + certificate.verdict().words());
        return FindingsPrint.exitCode(certificate.session());
    }
}
