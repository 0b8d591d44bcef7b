package railwitness.logger.ui.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import railwitness.drivers.line.LineException;
import railwitness.drivers.sheet.SheetException;
import railwitness.logger.recording.importing.ImportException;
import railwitness.logger.recording.store.Mistake;
import railwitness.logger.recording.store.StoreException;
import railwitness.logger.reporting.certificate.CertificateException;
import railwitness.logger.reporting.comparing.ComparisonException;
import railwitness.logger.reporting.exporting.ExportException;
import railwitness.safety.guardian.GuardianException;

/** Why a command did not do its work: one line for each fault, and the exit code that goes with it. */
record Refusal(int exitCode, List<String> lines) {
    static Refusal of(Throwable e) {
        if (e instanceof Error) {
            return new Refusal(
                    ExitCode.MACHINE,
                    List.of("the program could not go on (" + Mistake.words(e) + "); nothing was judged"
                            + (e instanceof OutOfMemoryError
                                    ? "; give it more memory with java -Xmx, or a smaller file"
                                    : "")));
        }
        if (e instanceof CertificateException && e.getCause() instanceof StoreException) {
            return new Refusal(ExitCode.STORE, List.of(oneLine(e.getMessage())));
        }
        if (e instanceof SheetException sheet) {
            return new Refusal(
                    ExitCode.BAD_INPUT,
                    sheet.faults().stream().map(Object::toString).toList());
        }
        if (e instanceof BadInput
                || e instanceof ImportException
                || e instanceof CertificateException
                || e instanceof ComparisonException
                || e instanceof ExportException
                || e instanceof IllegalArgumentException) {
            return new Refusal(ExitCode.BAD_INPUT, List.of(oneLine(e.getMessage())));
        }
        if (e instanceof LineException || e instanceof GuardianException) {
            return new Refusal(ExitCode.INSTRUMENT, List.of(oneLine(e.getMessage())));
        }
        if (e instanceof StoreException) {
            return new Refusal(ExitCode.STORE, List.of(oneLine(e.getMessage())));
        }
        if (e instanceof UncheckedIOException io) {
            return of(io.getCause());
        }
        if (e instanceof NoSuchFileException missing) {
            return new Refusal(ExitCode.BAD_INPUT, List.of(missing.getFile() + ": there is no such file"));
        }
        if (e instanceof AccessDeniedException denied) {
            return new Refusal(ExitCode.BAD_INPUT, List.of(denied.getFile() + ": may not be read; change its rights"));
        }
        if (e instanceof IOException) {
            return new Refusal(ExitCode.BAD_INPUT, List.of(oneLine(e.getMessage())));
        }
        return new Refusal(
                ExitCode.MACHINE,
                List.of("a mistake in the program: " + e + " at "
                        + (e.getStackTrace().length == 0 ? "an unknown place" : e.getStackTrace()[0])
                        + "; nothing was judged; please report it"));
    }

    private static String oneLine(String text) {
        return text == null
                ? "it did not work, and no reason was given"
                : text.strip().replaceAll("\\s*\\R\\s*", " ");
    }

    int print(PrintWriter err) {
        lines.forEach(err::println);
        err.flush();
        return exitCode;
    }
}
