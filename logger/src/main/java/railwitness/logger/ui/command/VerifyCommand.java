package railwitness.logger.ui.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import railwitness.logger.recording.store.Verification;
import railwitness.logger.reporting.certificate.Belonging;
import railwitness.logger.reporting.certificate.PageCheck;
import railwitness.logger.reporting.certificate.PrintedDigest;
import railwitness.logger.reporting.certificate.SquareText;
import railwitness.logger.text.VisibleText;

/** Whether a session is as it was recorded, and whether a certificate is of it. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = {
            "Says whether a session is as it was recorded, and a certificate its own.",
            "The chain of digests is worked out again. Where the session was altered, the second is "
                    + "named from which on it is (exit code 4). With a certificate it is said whether the two "
                    + "belong together and whether its pages say what the session says (exit code 1 when not)."
        },
        footer = {"", "Example: railwitness verify 0412.session 0412.pdf"})
final class VerifyCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "SESSION", description = "a session file")
    private Path session;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "PDF",
            description = "The certificate made of it, or a picture of its first page, PNG or JPEG.")
    private Path pdf;

    @Option(
            names = "--digest",
            paramLabel = "HEX",
            description = "the digest printed on a certificate that is only on paper")
    private String digest;

    @Option(names = "--json", description = "Print JSON instead of sentences.")
    private boolean json;

    @Override
    public Integer call() {
        if (pdf != null && digest != null) {
            throw new BadInput("give a certificate or --digest, not both");
        }
        Optional<SquareText> square =
                Optional.ofNullable(pdf).filter(SquareText::isPicture).map(SquareText::in);
        Optional<PrintedDigest> printed =
                square.isPresent() ? Optional.empty() : Optional.ofNullable(pdf).map(PrintedDigest::in);
        Optional<String> typed =
                Optional.ofNullable(digest).map(PrintedDigest::typed).or(() -> square.map(SquareText::digest));
        Verification verification = Verification.of(session);
        Optional<Belonging> belonging = printed.map(certificate -> Belonging.of(verification, certificate))
                .or(() -> typed.map(digits -> Belonging.of(verification, digits)));
        Optional<PageCheck> pages = printed.isPresent() && belonging.orElseThrow() == Belonging.TOGETHER
                ? Optional.of(PageCheck.of(session, pdf))
                : Optional.empty();
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(json(verification, belonging, pages));
        } else {
            out.println(session + ": " + verification.words());
            belonging.ifPresent(answer -> out.println((pdf == null ? "digest" : pdf) + ": "
                    + (pages.isPresent() && !pages.get().isSame()
                            ? "the digest is that of the session"
                            : answer.words())));
            pages.ifPresent(check -> out.println(pdf + ": " + check.words()));
            square.ifPresent(
                    read -> out.println(pdf + ": the square on the paper says No. " + VisibleText.line(read.number())));
            if (typed.isPresent()) {
                out.println("digest: not compared: what else stands on the paper; give the file to compare its pages");
            }
        }
        out.flush();
        if (!verification.isIntact()) {
            return ExitCode.STORE;
        }
        boolean good = belonging.orElse(Belonging.TOGETHER) == Belonging.TOGETHER
                && pages.map(PageCheck::isSame).orElse(true);
        return good ? ExitCode.DONE : ExitCode.NOT_FIT;
    }

    private static String json(Verification verification, Optional<Belonging> belonging, Optional<PageCheck> pages) {
        ObjectNode node = JsonNodeFactory.instance
                .objectNode()
                .put("intact", verification.isIntact())
                .put("state", verification.state().word())
                .put("readings", verification.readings())
                .put("digests", verification.links())
                .put("seal", verification.seal());
        if (verification.firstSecond().isPresent()) {
            node.put("not_intact_from_s", verification.firstSecond().getAsLong());
        } else {
            node.putNull("not_intact_from_s");
        }
        verification.faults().forEach(node.putArray("faults")::add);
        if (belonging.isPresent()) {
            boolean same = pages.map(PageCheck::isSame).orElse(true);
            node.put("together", belonging.get() == Belonging.TOGETHER && same);
            node.put("certificate", same ? belonging.get().words() : pages.get().words());
        }
        pages.ifPresent(check -> {
            check.differences().forEach(node.putArray("page_differences")::add);
            node.put("not_compared", check.notCompared());
        });
        try {
            return new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a verification can always be written as JSON", e);
        }
    }
}
