package railwitness.logger.ui.command;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.reporting.certificate.Certificate;
import railwitness.logger.reporting.certificate.Letterhead;
import railwitness.logger.reporting.certificate.Order;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.certificate.Particular;
import railwitness.logger.reporting.certificate.Particulars;
import railwitness.logger.text.VisibleText;

/** The paper that goes back with the unit. */
@Command(
        name = "certificate",
        mixinStandardHelpOptions = true,
        description = {
            "Makes the test certificate of a session as a PDF.",
            "The first page sums up; the pages behind it have every figure with its uncertainty, the "
                    + "method, the instruments and what happened. A file that is there already is replaced only "
                    + "when it is a certificate of the same session; the new one is then its next issue and says so."
        },
        footer = {"", "Example: railwitness certificate 0412.session --out 0412.pdf --before 0412-found.session"})
final class CertificateCommand implements Callable<Integer> {
    private static final int MOST_SIGNS = 12;

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

    @Option(names = "--workshop", paramLabel = "TEXT", description = "laboratory or workshop that tested")
    private String workshop;

    @Option(names = "--address", paramLabel = "TEXT", description = "address of the laboratory")
    private String address;

    @Option(names = "--place", paramLabel = "TEXT", description = "where it was tested, where that is not the address")
    private String place;

    @Option(names = "--customer", paramLabel = "TEXT", description = "whose unit it is")
    private String customer;

    @Option(names = "--customer-address", paramLabel = "TEXT", description = "address of the customer")
    private String customerAddress;

    @Option(names = "--received", paramLabel = "DAY", description = "day on which the unit was received")
    private String received;

    @Option(
            names = "--ambient",
            paramLabel = "TEXT",
            description = "Ambient temperature with its uncertainty, such as '21.3 degC, U 0.5'.")
    private String ambient;

    @Option(
            names = "--specification",
            paramLabel = "TEXT",
            description = "Specification with its issue, where it is more than the design sheet.")
    private String specification;

    @Option(names = "--authorised-by", paramLabel = "NAME", description = "who authorises the certificate")
    private String authorisedBy;

    @Option(names = "--function", paramLabel = "TEXT", description = "function of that person")
    private String function;

    @Option(
            names = "--letterhead",
            paramLabel = "FOLDER",
            description = "Folder with the workshop's logo.png or logo.jpg, and text.txt.")
    private Path letterhead;

    @Option(names = "--whole", description = "Check the chain of a long session too, however long that takes.")
    private boolean whole;

    private Particulars stated() {
        Map<Particular, String> stated = new EnumMap<>(Particular.class);
        put(stated, Particular.WORKSHOP, workshop);
        put(stated, Particular.ADDRESS, address);
        put(stated, Particular.PLACE, place);
        put(stated, Particular.CUSTOMER, customer);
        put(stated, Particular.CUSTOMER_ADDRESS, customerAddress);
        put(stated, Particular.RECEIVED, received);
        put(stated, Particular.AMBIENT, ambient);
        put(stated, Particular.SPECIFICATION, specification);
        put(stated, Particular.AUTHORISED_BY, authorisedBy);
        put(stated, Particular.FUNCTION, function);
        return new Particulars(stated);
    }

    private static void put(Map<Particular, String> stated, Particular what, String text) {
        if (text != null) {
            stated.put(what, text);
        }
    }

    enum Sheet {
        a4,
        letter
    }

    @Override
    public Integer call() {
        Path folder = out.toAbsolutePath().getParent();
        Certificate certificate = Certificate.of(
                session,
                new Order(
                        paper == Sheet.a4 ? Paper.A4 : Paper.LETTER,
                        causes,
                        Optional.ofNullable(before),
                        stated(),
                        Instant.now().truncatedTo(ChronoUnit.MILLIS),
                        whole,
                        Optional.ofNullable(folder),
                        Optional.ofNullable(letterhead).map(Letterhead::in)));
        byte[] pdf = certificate.pdf();
        if (!certificate.lackingSigns().isEmpty()) {
            spec.commandLine()
                    .getErr()
                    .println("no font of the program has a sign for "
                            + certificate.lackingSigns().stream()
                                    .map(VisibleText::line)
                                    .sorted()
                                    .limit(MOST_SIGNS)
                                    .collect(Collectors.joining(" "))
                            + "; its code is printed instead");
        }
        if (!certificate.expired().isEmpty()) {
            spec.commandLine()
                    .getErr()
                    .println("calibration was past due when the unit was tested: "
                            + String.join(", ", certificate.expired()));
        }
        certificate.keep(pdf, out);
        spec.commandLine()
                .getOut()
                .println(out + ": No. " + VisibleText.line(certificate.number()) + ", " + certificate.headline());
        return FindingsPrint.exitCode(certificate.session());
    }
}
