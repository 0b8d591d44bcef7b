package railwitness.logger.reporting.manual;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.certificate.PaperForKeeping;
import railwitness.logger.reporting.certificate.Typesetter;

/** Makes one PDF of the documents of a folder. */
public final class ManualPdf {
    /** Read one after the other; a folder that lacks one has no such chapter. */
    private static final List<String> CHAPTERS = List.of("window.md", "first-hour.md", "burn-in.md", "toroid.md");

    private ManualPdf() {}

    /** @param arguments folder of the documents, then the file to make; the build calls it */
    public static void main(String[] arguments) throws IOException {
        write(Path.of(arguments[0]), Path.of(arguments[1]), Instant.now());
    }

    /** Sets all chapters; a file that is there is replaced. */
    public static void write(Path docs, Path out, Instant made) throws IOException {
        List<Path> chapters = new ArrayList<>();
        for (String name : CHAPTERS) {
            if (Files.exists(docs.resolve(name))) {
                chapters.add(docs.resolve(name));
            }
        }
        try (PDDocument document = new PDDocument()) {
            Typesetter type = new Typesetter(document, Paper.A4, new ManualFurniture());
            for (Path chapter : chapters) {
                type.newPage();
                new SetMarkdown(type, docs).set(Files.readString(chapter));
            }
            type.finish();
            PaperForKeeping.inform(document, "Railwitness, the manual", made);
            document.save(out.toFile());
        }
    }
}
