package railwitness.logger.reporting.manual;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import railwitness.logger.reporting.certificate.Column;
import railwitness.logger.reporting.certificate.Face;
import railwitness.logger.reporting.certificate.Paragraph;
import railwitness.logger.reporting.certificate.Section;
import railwitness.logger.reporting.certificate.Span;
import railwitness.logger.reporting.certificate.Table;
import railwitness.logger.reporting.certificate.Tone;
import railwitness.logger.reporting.certificate.Typesetter;

/** Sets what our documents are written with: headings, paragraphs, lists, tables, pictures and lines to be typed. */
final class SetMarkdown {
    private static final Pattern PICTURE = Pattern.compile("!\\[([^]]*)]\\(([^)]+)\\)");
    private static final Pattern ITEM = Pattern.compile("(?:[-*]|\\d+\\.) +(.*)");
    private static final float TITLE = 17;
    private static final float TEXT = 9.5f;
    private static final float TYPED = 8;

    private final Typesetter type;
    private final Path docs;
    private final Section section;
    private final List<String> open = new ArrayList<>();

    SetMarkdown(Typesetter type, Path docs) {
        this.type = type;
        this.docs = docs;
        this.section = new Section(type);
    }

    void set(String document) throws IOException {
        boolean typed = false;
        List<String> table = new ArrayList<>();
        for (String line : (document + "\n\n").split("\n", -1)) {
            if (!line.startsWith("|") && !table.isEmpty()) {
                table(table);
                table.clear();
            }
            if (line.startsWith("```")) {
                paragraph();
                typed = !typed;
            } else if (typed || line.startsWith("    ") && open.isEmpty()) {
                typed(line.strip());
            } else if (line.startsWith("|")) {
                paragraph();
                table.add(line);
            } else {
                words(line);
            }
        }
    }

    private void words(String line) throws IOException {
        Matcher picture = PICTURE.matcher(line.strip());
        if (line.isBlank() || line.startsWith("<a id")) {
            paragraph();
        } else if (line.startsWith("# ")) {
            paragraph();
            title(plain(line.substring(2)));
        } else if (line.startsWith("#")) {
            paragraph();
            section.begin(plain(line.replaceFirst("#+ ", "")), 40);
        } else if (picture.matches()) {
            paragraph();
            picture(picture.group(1), docs.resolve(picture.group(2)));
        } else {
            if (ITEM.matcher(line).matches()) {
                paragraph();
            }
            open.add(line.strip());
        }
    }

    private void title(String words) {
        type.heading("H1", words, () -> type.text(words, Face.MEDIUM, TITLE, Tone.INK, type.left(), type.y() + TITLE));
        type.down(TITLE + 14);
    }

    private void paragraph() {
        if (open.isEmpty()) {
            return;
        }
        String text = plain(String.join(" ", open));
        open.clear();
        Paragraph.of(type.faces(), TEXT, type.width(), text.replaceFirst("^[-*] ", "\u2013 "))
                .flow(type, type.left());
        type.down(4);
    }

    private void typed(String line) {
        Paragraph.of(type.faces(), TYPED, type.width() - 14, List.of(Span.muted(line.isEmpty() ? " " : line)))
                .flow(type, type.left() + 14);
    }

    private void table(List<String> lines) {
        List<List<String>> rows = lines.stream()
                .filter(line -> !line.matches("[|:\\- ]+"))
                .map(SetMarkdown::cells)
                .toList();
        int wide = rows.get(0).size();
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < wide; i++) {
            int at = i;
            int longest = rows.stream()
                    .mapToInt(row -> at < row.size() ? row.get(at).length() : 0)
                    .max()
                    .orElse(1);
            columns.add(Column.words(rows.get(0).get(i), Math.max(8, Math.min(60, longest))));
        }
        type.need(50);
        Table table = new Table(type, TYPED, 1.8f, columns);
        table.head();
        rows.stream()
                .skip(1)
                .map(row -> row.size() == wide ? row : filled(row, wide))
                .forEach(table::row);
        type.down(8);
    }

    private static List<String> filled(List<String> row, int wide) {
        List<String> whole = new ArrayList<>(row.subList(0, Math.min(wide, row.size())));
        while (whole.size() < wide) {
            whole.add("");
        }
        return whole;
    }

    private static List<String> cells(String line) {
        String inner = line.strip().replaceFirst("^\\|", "").replaceFirst("\\|$", "");
        return Arrays.stream(inner.split("(?<!\\\\)\\|", -1))
                .map(String::strip)
                .map(SetMarkdown::plain)
                .toList();
    }

    private void picture(String words, Path file) throws IOException {
        BufferedImage image = ImageIO.read(file.toFile());
        float width = type.width();
        float height = width * image.getHeight() / image.getWidth();
        type.need(height + 8);
        type.image(image, words, type.left(), type.y(), width, height);
        type.down(height + 10);
    }

    /** Without the signs of the mark-up; of a link its words. */
    private static String plain(String text) {
        return text.replaceAll("\\[([^]]+)]\\([^)]+\\)", "$1")
                .replaceAll("<a id=\"[^\"]*\"></a>", "")
                .replaceAll("[*_]{2}([^*_]+)[*_]{2}", "$1")
                .replace("`", "")
                .replace("\\|", "|");
    }
}
