package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Whether the pages of a certificate say and show what its session says: they are set again from the session and
 * compared, text line by line and everything drawn, fonts included.
 *
 * @param differences one sentence each, at most ten; empty where there are none
 * @param notCompared what was not compared, in words
 */
public record PageCheck(List<String> differences, String notCompared) {
    private static final int MOST = 10;
    private static final String NOT_IN_THE_SESSION =
            "workshop, customer, day of issue and what is said of an earlier test, which the session does not hold";

    public PageCheck {
        differences = List.copyOf(differences);
    }

    /**
     * Sets the certificate of the session again and compares.
     *
     * @throws CertificateException when the file cannot be read as a certificate
     * @throws railwitness.logger.recording.store.StoreException when the session cannot be read
     */
    public static PageCheck of(Path session, Path pdf) {
        return of(session, pdf, making -> Certificate.again(session, making).pdf());
    }

    /** @param again sets the pages again as they were made */
    static PageCheck of(Path session, Path pdf, Function<Making, byte[]> again) {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            Optional<Making> making = Making.of(document);
            Making used = making.orElseGet(
                    () -> Making.plain(document, session.getFileName().toString()));
            try (PDDocument expected = Loader.loadPDF(again.apply(used))) {
                return making.isPresent() && used.byThisProgram()
                        ? wholly(document, expected)
                        : figuresOnly(document, expected, used.program());
            }
        } catch (IOException
                | IllegalArgumentException
                | IllegalStateException
                | NullPointerException
                | ClassCastException
                | IndexOutOfBoundsException e) {
            throw new CertificateException(pdf + ": its pages cannot be read (" + e.getMessage() + ")", e);
        }
    }

    public boolean isSame() {
        return differences.isEmpty();
    }

    /** One line. */
    public String words() {
        return (isSame()
                        ? "its pages say what the session says"
                        : "the certificate was altered, its pages do not say what the session says: "
                                + String.join("; ", differences))
                + "; not compared: " + notCompared;
    }

    private static PageCheck wholly(PDDocument document, PDDocument again) throws IOException {
        List<String> differences = pageCount(document, again);
        List<PageLines> there = PageLines.all(document);
        List<PageLines> expected = PageLines.all(again);
        for (int i = 0; i < Math.min(there.size(), expected.size()); i++) {
            List<String> words = there.get(i).differences(expected.get(i), "page " + (i + 1));
            differences.addAll(words);
            if (words.isEmpty()
                    && !SameObject.of(
                            document.getPage(i).getCOSObject(), again.getPage(i).getCOSObject())) {
                differences.add("page " + (i + 1)
                        + " says the same, but something was added to it or is drawn in another" + " way");
            }
        }
        added(document, again).ifPresent(differences::add);
        return new PageCheck(first(differences), NOT_IN_THE_SESSION);
    }

    /** What lies beside the pages and may be shown over them: forms, layers, scripts. */
    private static Optional<String> added(PDDocument document, PDDocument again) {
        Set<COSName> keys =
                new TreeSet<>(document.getDocumentCatalog().getCOSObject().keySet());
        keys.removeAll(again.getDocumentCatalog().getCOSObject().keySet());
        keys.remove(COSName.METADATA);
        return keys.isEmpty()
                ? Optional.empty()
                : Optional.of("something was added beside the pages (a form, layers or a script)");
    }

    private static PageCheck figuresOnly(PDDocument document, PDDocument again, String program) throws IOException {
        List<String> differences = new ArrayList<>();
        List<PageLines> pages = PageLines.all(document);
        for (int i = 0; i < pages.size(); i++) {
            if (!pages.get(i).holds("Page " + (i + 1) + " of " + pages.size())) {
                differences.add("page " + (i + 1) + " of " + pages.size() + " is not numbered so");
            }
        }
        differences.addAll(PageLines.joined(pages).figureDifferences(PageLines.joined(PageLines.all(again))));
        List<String> verdicts = PageLines.verdicts(document);
        List<String> expected = PageLines.verdicts(again);
        if (!verdicts.equals(expected)) {
            differences.add(
                    "it says " + String.join(", ", verdicts) + ", its session says " + String.join(", ", expected));
        }
        return new PageCheck(
                first(differences),
                "everything but the verdict, the figures and the count of pages, because it was made by " + program);
    }

    private static List<String> pageCount(PDDocument document, PDDocument again) {
        List<String> differences = new ArrayList<>();
        if (document.getNumberOfPages() != again.getNumberOfPages()) {
            differences.add("it has " + document.getNumberOfPages() + " pages, not " + again.getNumberOfPages());
        }
        return differences;
    }

    private static List<String> first(List<String> differences) {
        return differences.subList(0, Math.min(MOST, differences.size()));
    }
}
