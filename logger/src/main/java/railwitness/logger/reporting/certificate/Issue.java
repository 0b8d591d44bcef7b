package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/**
 * Which issue of a session's certificate it is (ISO/IEC 17025:2017, 7.8.8).
 *
 * @param number from 1
 * @param replaces what it takes the place of, in words; empty for the first
 * @param changes what is not as it was, one each
 */
record Issue(int number, Optional<String> replaces, List<String> changes) {
    static final Issue FIRST = new Issue(1, Optional.empty(), List.of());

    private static final int MOST_FILES = 100;
    private static final long MOST_BYTES = 5_000_000;

    Issue {
        changes = List.copyOf(changes);
    }

    /** An earlier one, as its file says. */
    private record Before(
            String fileDigest, Making making, String words, String verdict, String figures, String seal) {}

    /**
     * The one after the latest that lies in a folder.
     *
     * @param now how this one will be made, its issue left aside
     */
    static Issue after(Path folder, Evidence evidence) {
        return latest(folder, evidence.session().head().id())
                .map(before -> new Issue(
                        before.making().issue().number() + 1, Optional.of(before.words()), changes(before, evidence)))
                .orElse(FIRST);
    }

    private static Optional<Before> latest(Path folder, String sessionId) {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName()
                            .toString()
                            .toLowerCase(java.util.Locale.ROOT)
                            .endsWith(".pdf"))
                    .filter(file -> Files.isRegularFile(file) && file.toFile().length() < MOST_BYTES)
                    .sorted(Comparator.comparingLong(
                            (Path file) -> -file.toFile().lastModified()))
                    .limit(MOST_FILES)
                    .flatMap(file -> read(file, sessionId).stream())
                    .max(Comparator.comparingInt(
                            before -> before.making().issue().number()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static Optional<Before> read(Path file, String sessionId) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            try (PDDocument document = Loader.loadPDF(bytes)) {
                PDDocumentInformation information = document.getDocumentInformation();
                if (!sessionId.equals(information.getCustomMetadataValue(Certificate.SESSION_KEY))) {
                    return Optional.empty();
                }
                return Making.of(document)
                        .map(making -> new Before(
                                Digest.of(bytes),
                                making,
                                "No. " + said(information, Making.NUMBER) + ", issue "
                                        + making.issue().number() + ", of "
                                        + Dates.day(making.order().issued(), java.time.ZoneOffset.UTC)
                                        + " (digest of that file "
                                        + Digest.of(bytes).substring(0, 16) + "\u2026)",
                                said(information, Making.VERDICT),
                                said(information, Making.FIGURES),
                                said(information, Certificate.DIGEST_KEY)));
            }
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static String said(PDDocumentInformation information, String key) {
        return Optional.ofNullable(information.getCustomMetadataValue(key)).orElse("not stated");
    }

    private static List<String> changes(Before before, Evidence now) {
        List<String> changes = new ArrayList<>();
        change(
                changes,
                "session digest",
                before.seal().substring(0, Math.min(16, before.seal().length())),
                now.seal().substring(0, 16));
        change(changes, "verdict", before.verdict(), now.headline().words());
        if (!before.figures().equals(now.figuresDigest())) {
            changes.add("figures: worked out anew, they are not all as they were");
        }
        for (Particular what : Particular.values()) {
            change(
                    changes,
                    what.label(),
                    before.making().order().stated().words(what),
                    now.order().stated().words(what));
        }
        change(changes, "program", before.making().program(), ProgramBuild.text());
        change(
                changes,
                "probable causes",
                printed(before.making().order().causes()),
                printed(now.order().causes()));
        change(
                changes,
                "earlier test cited",
                before.making().earlier().map(Earlier::words).orElse("none"),
                now.earlier().map(Earlier::words).orElse("none"));
        change(
                changes,
                "paper",
                before.making().order().paper().name(),
                now.order().paper().name());
        if (changes.isEmpty()) {
            changes.add("nothing but the day of issue");
        }
        return changes;
    }

    private static String printed(boolean causes) {
        return causes ? "printed" : "not printed";
    }

    private static void change(List<String> changes, String what, String before, String now) {
        if (!before.equals(now)) {
            changes.add(what + ": '" + before + "' became '" + now + "'");
        }
    }
}
