package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import railwitness.analysis.design.FigureName;

/**
 * The text of a page as anybody can select it.
 *
 * @param lines from top to bottom, single spaces between words
 */
record PageLines(List<String> lines) {
    private static final Pattern VERDICT = Pattern.compile("Fit to return|Not fit to return|Not judged");
    private static final Pattern FIGURE = Pattern.compile(Arrays.stream(FigureName.values())
                    .map(name -> Pattern.quote(name.word()))
                    .collect(Collectors.joining("|", "(", ")"))
            + "(, \\S+ rail)? [\\u2212\\d]");
    private static final int LONGEST_SAID = 120;

    static List<PageLines> all(PDDocument document) throws IOException {
        List<PageLines> pages = new ArrayList<>();
        for (int i = 1; i <= document.getNumberOfPages(); i++) {
            pages.add(page(document, i));
        }
        return pages;
    }

    /** @param number from 1 on */
    static PageLines page(PDDocument document, int number) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        return new PageLines(Arrays.stream(stripper.getText(document).split("\\R"))
                .map(line -> line.strip().replaceAll("\\s+", " "))
                .filter(line -> !line.isEmpty())
                .toList());
    }

    static PageLines joined(List<PageLines> pages) {
        return new PageLines(pages.stream().flatMap(page -> page.lines.stream()).toList());
    }

    /** Every verdict that is written anywhere, in the order of writing: so one written over something else shows too. */
    static List<String> verdicts(PDDocument document) throws IOException {
        String written = new PDFTextStripper().getText(document);
        return VERDICT.matcher(written).results().map(MatchResult::group).toList();
    }

    boolean holds(String text) {
        return lines.stream().anyMatch(line -> line.contains(text));
    }

    /** What differs from the lines that should stand there. */
    List<String> differences(PageLines expected, String where) {
        List<String> lacking = without(expected.lines, lines);
        List<String> added = without(lines, expected.lines);
        List<String> differences = new ArrayList<>();
        for (int i = 0; i < Math.max(lacking.size(), added.size()); i++) {
            differences.add(where
                    + (i < added.size() ? " says '" + cut(added.get(i)) + "'" : " lacks '" + cut(lacking.get(i)) + "'")
                    + (i < added.size() && i < lacking.size() ? ", not '" + cut(lacking.get(i)) + "'" : ""));
        }
        return differences;
    }

    /** The same for the verdict and the rows of figures alone. */
    List<String> figureDifferences(PageLines expected) {
        return figures().differences(expected.figures(), "it");
    }

    /** The lines with a verdict or a figure alone. */
    PageLines figures() {
        return new PageLines(lines.stream()
                .filter(line -> VERDICT.matcher(line).find() || isFigure(line))
                .toList());
    }

    private static boolean isFigure(String line) {
        return FIGURE.matcher(line).find();
    }

    private static List<String> without(List<String> these, List<String> those) {
        List<String> rest = new ArrayList<>(these);
        those.forEach(rest::remove);
        return rest;
    }

    private static String cut(String line) {
        return line.length() <= LONGEST_SAID ? line : line.substring(0, LONGEST_SAID) + "\u2026";
    }
}
