package railwitness.logger.reporting.comparing;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import railwitness.logger.reporting.certificate.Column;
import railwitness.logger.reporting.certificate.Digest;
import railwitness.logger.reporting.certificate.Face;
import railwitness.logger.reporting.certificate.Paper;
import railwitness.logger.reporting.certificate.PaperForKeeping;
import railwitness.logger.reporting.certificate.Paragraph;
import railwitness.logger.reporting.certificate.Pictures;
import railwitness.logger.reporting.certificate.Section;
import railwitness.logger.reporting.certificate.Span;
import railwitness.logger.reporting.certificate.Table;
import railwitness.logger.reporting.certificate.Tone;
import railwitness.logger.reporting.certificate.Typesetter;
import railwitness.logger.reporting.certificate.Typography;
import railwitness.logger.reporting.findings.SessionFindings;

/** A comparison on paper, set as certificates are: what changed in plain words, then the numbers, then the curves. */
public final class ComparisonPdf {
    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final float TITLE = 17;
    private static final float PICTURE = 148;
    private static final int MOST_IN_A_TABLE = 7;

    /**
     * How it is wanted.
     *
     * @param issued when it is made
     * @param workshop who made it
     */
    public record Wish(Paper paper, Instant issued, Optional<String> workshop) {}

    private final Comparison comparison;
    private final Wish wish;
    private final Typesetter type;
    private final Section section;
    private final String number;
    private final boolean rehearsal;

    private ComparisonPdf(Comparison comparison, Wish wish, PDDocument document) {
        this.comparison = comparison;
        this.wish = wish;
        this.rehearsal =
                comparison.sessions().stream().anyMatch(one -> one.head().rehearsal());
        String digest = Digest.of(String.join("\n", comparison.seals()));
        this.number = "C"
                + DateTimeFormatter.BASIC_ISO_DATE.format(
                        wish.issued().atZone(ZoneOffset.UTC).toLocalDate())
                + "-"
                + Digest.of(digest + wish.issued() + wish.workshop().orElse(""))
                        .substring(0, 6)
                        .toUpperCase(Locale.ROOT);
        this.type = new Typesetter(
                document, wish.paper(), new ComparisonFurniture(number, rehearsal, digest.substring(0, 32) + "\u2026"));
        this.section = new Section(type);
    }

    /** On A4, now, as {@link #write(Comparison, Path, Wish)}. */
    public static void write(Comparison comparison, Path out) {
        write(comparison, out, new Wish(Paper.A4, Instant.now(), Optional.empty()));
    }

    /**
     * Makes the file; it gets its name when it is whole.
     *
     * @throws ComparisonException when the file is there already or cannot be written
     */
    public static void write(Comparison comparison, Path out, Wish wish) {
        if (Files.exists(out)) {
            throw new ComparisonException(out + " is already there and is never written over; choose another name");
        }
        Path part = out.resolveSibling("." + out.getFileName() + ".part");
        try (PDDocument document = new PDDocument()) {
            ComparisonPdf pdf = new ComparisonPdf(comparison, wish, document);
            pdf.fill();
            PaperForKeeping.inform(document, "Comparison " + pdf.number, wish.issued());
            document.save(part.toFile());
            Files.move(part, out, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            part.toFile().delete();
            throw new ComparisonException(
                    out + " cannot be written (" + e.getMessage() + "); is the folder there, and is there room?");
        }
    }

    private void fill() throws IOException {
        type.newPage();
        title();
        lead();
        sessions();
        if (comparison.charts().isEmpty()) {
            IntStream.range(1, comparison.sessions().size()).forEach(this::against);
        } else {
            control();
            values();
        }
        how();
        pictures();
        section.small("End of comparison");
        type.finish();
    }

    private void title() {
        float line = type.y() + TITLE;
        type.heading(
                "H1", "Comparison", () -> type.text("Comparison", Face.MEDIUM, TITLE, Tone.INK, type.left(), line));
        type.textRight("No. " + number, Face.MEDIUM, 12, Tone.INK, type.right(), line - 2);
        type.text(wish.workshop().orElse("workshop not stated"), Face.REGULAR, 9, Tone.MUTED, type.left(), line + 14);
        type.textRight(
                "made on "
                        + DateTimeFormatter.ISO_LOCAL_DATE.format(wish.issued().atZone(ZoneOffset.UTC)),
                Face.REGULAR,
                9,
                Tone.MUTED,
                type.right(),
                line + 14);
        type.moveTo(line + 22);
        type.rule(type.left(), type.right(), type.y(), 0.8f, Tone.INK);
        if (rehearsal) {
            float at = type.y() + 13;
            type.text(
                    "REHEARSAL: made on the virtual bench, no real unit was tested.",
                    Face.ITALIC,
                    9,
                    Tone.INK,
                    type.left(),
                    at);
            type.moveTo(at + 7);
            type.rule(type.left(), type.right(), type.y(), 0.8f, Tone.INK);
        }
        type.down(9);
    }

    private void lead() {
        ChangeWords words = new ChangeWords(comparison);
        List<String> said = new ArrayList<>();
        if (comparison.charts().isEmpty()) {
            for (int i = 1; i < comparison.sessions().size(); i++) {
                said.add((comparison.sessions().size() > 2 ? Comparison.letter(i) + " against A: " : "")
                        + words.against(i));
            }
        } else if (comparison.unlike().isEmpty()) {
            said.add("All " + comparison.sessions().size() + " units are alike in every figure.");
        } else {
            comparison.unlike().forEach((place, charts) -> said.add(unlike(place, charts)));
        }
        said.stream().limit(6).forEach(text -> {
            Paragraph.of(type.faces(), 12, type.width(), Typography.of(text)).flow(type, type.left());
            type.down(3);
        });
        if (said.size() > 6) {
            section.paragraph("and " + (said.size() - 6) + " more, told by the control charts.");
        }
        comparison.sessions().forEach(session -> session.findings()
                .contradictions()
                .forEach(one -> section.paragraph(List.of(new Span(
                        "Contradiction in " + session.head().id() + ": " + one.text() + "; check: " + one.check() + ".",
                        Face.REGULAR,
                        Tone.FAULT)))));
        section.small(comparison.charts().isEmpty() ? words.chance(1) + " " + Matter.rule() : words.chanceOfSignals());
    }

    private String unlike(int place, List<SisterChart> charts) {
        return Comparison.name(comparison, place) + " is unlike its sisters: "
                + charts.stream()
                        .limit(4)
                        .map(chart -> chart.figure().label() + " (" + String.join("; ", chart.reasons(place)) + ")")
                        .collect(Collectors.joining(", "))
                + (charts.size() > 4 ? " and " + (charts.size() - 4) + " more figures" : "") + ".";
    }

    private void sessions() {
        section.begin("What was compared", 60);
        Table table = new Table(
                type,
                Section.SMALL,
                1.8f,
                List.of(
                        Column.words("", 4),
                        Column.words("unit, serial, condition", 31),
                        Column.words("session", 25),
                        Column.words("begun, UTC", 19),
                        Column.words("state, verdict", 20),
                        Column.words("session digest", 18)));
        table.head();
        for (int i = 0; i < comparison.sessions().size(); i++) {
            SessionFindings session = comparison.sessions().get(i);
            var head = session.head();
            table.row(List.of(
                    Comparison.letter(i),
                    head.unitName()
                            + (head.unitSerial().isEmpty() ? "" : ", serial " + head.unitSerial())
                            + (head.unitCondition().isEmpty() ? "" : ", " + head.unitCondition()),
                    head.id(),
                    MINUTE.format(head.startedWall()),
                    session.state().word() + ", " + session.findings().verdict().words(),
                    comparison
                                    .seals()
                                    .get(i)
                                    .substring(
                                            0,
                                            Math.min(
                                                    12,
                                                    comparison.seals().get(i).length())) + "\u2026"));
        }
        type.down(4);
        long names = comparison.sessions().stream()
                .map(one -> one.head().unitName())
                .distinct()
                .count();
        if (names > 1) {
            section.small("These are units of different names; a difference then is one of model, too.");
        }
    }

    /** Each later session against the first: one row for each figure. */
    private void against(int later) {
        String name = Comparison.letter(later);
        section.begin(name + " against A", 80);
        Matter matter = new Matter(comparison);
        Table table = new Table(
                type,
                Section.SMALL,
                1.8f,
                List.of(
                        Column.words("figure", 38),
                        Column.words("unit", 11),
                        Column.numbers("A", 14),
                        Column.numbers(name, 14),
                        Column.numbers(name + " \u2212 A", 14),
                        Column.numbers("U (95 %)", 12),
                        Column.numbers("matters from", 13),
                        Column.words("what it means", 29)));
        table.head();
        for (Compared figure : comparison.figures()) {
            Compared shown = ChangeWords.shown(figure);
            Optional<Change> change = figure.changes().get(later);
            Optional<Change> printed = shown.changes().get(later);
            boolean matters = change.filter(one -> matter.matters(figure, one)).isPresent();
            String means = change.map(one -> matter.words(figure, one)).orElse("not found in both");
            table.spans(
                    List.of(
                            Span.plain(figure.label()),
                            Span.muted(shown.unit()),
                            Span.plain(Typography.of(Print.value(shown, 0))),
                            Span.plain(Typography.of(Print.value(shown, later))),
                            Span.plain(
                                    Typography.of(printed.map(Print::difference).orElse(""))),
                            Span.muted(printed.map(Print::expanded).orElse("")),
                            Span.muted(mattersFrom(matter, figure, shown)),
                            matters ? Span.strong(means) : Span.plain(means)),
                    figure.atOtherPoints() && change.isPresent()
                            ? "A at " + figure.notes().get(0) + "; " + name + " at "
                                    + figure.notes().get(later)
                            : "");
        }
        type.down(4);
    }

    private static String mattersFrom(Matter matter, Compared figure, Compared shown) {
        double factor = figure.values().stream()
                .flatMap(Optional::stream)
                .filter(value -> value.value() != 0)
                .findFirst()
                .map(value -> shown.values().stream()
                                .flatMap(Optional::stream)
                                .filter(other -> other.value() != 0)
                                .findFirst()
                                .orElse(value)
                                .value()
                        / value.value())
                .orElse(1.0);
        return matter.from(figure).isPresent() ? twoDigits(matter.from(figure).getAsDouble() * factor) : "";
    }

    private static String twoDigits(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(2));
        int missing = Math.max(0, 2 - rounded.precision());
        return rounded.setScale(Math.max(0, rounded.scale() + missing), RoundingMode.HALF_UP)
                .toPlainString();
    }

    private void control() {
        section.begin("Control charts", PICTURE);
        section.small(
                "In the order of time. Limits three standard deviations from the mean, worked out without those units"
                        + " that give a signal (ISO 7870-2); the names below are serial numbers.");
        new Pictures(type).flow(new ComparisonCharts(comparison).control(), PICTURE);
    }

    /** The values of all units, as many columns beside each other as can be read. */
    private void values() {
        section.begin("Figures of all units", 80);
        int count = comparison.sessions().size();
        int tables = (count + MOST_IN_A_TABLE - 1) / MOST_IN_A_TABLE;
        int wide = (count + tables - 1) / tables;
        for (int from = 0; from < count; from += wide) {
            int first = from;
            int to = Math.min(count, from + wide);
            List<Column> columns = new ArrayList<>(List.of(Column.words("figure", 34), Column.words("unit", 10)));
            IntStream.range(first, to)
                    .forEach(i -> columns.add(Column.numbers(Comparison.name(comparison, i), 88f / wide)));
            Table table = new Table(type, Section.DENSE, 1.6f, columns);
            table.head();
            for (Compared figure : comparison.figures()) {
                Compared shown = ChangeWords.shown(figure);
                List<String> cells = new ArrayList<>(List.of(figure.label(), shown.unit()));
                IntStream.range(first, to).forEach(i -> cells.add(Typography.of(Print.value(shown, i))));
                table.row(cells);
            }
            type.down(8);
        }
    }

    private void pictures() {
        var charts = new ComparisonCharts(comparison).overEachOther();
        if (!charts.isEmpty()) {
            section.begin("Curves over each other", PICTURE + 20);
            new Pictures(type).flow(charts, PICTURE);
        }
    }

    private void how() {
        section.begin("How it was compared", 90);
        section.paragraph(
                "U is the expanded uncertainty of the difference for a coverage probability of 95 %. Errors of the"
                        + " same instrument on the same range cancel in a difference, but for "
                        + Math.round(100 * Change.DRIFT_SHARE)
                        + " % of what it may be off by, allowed for its drift from one session to the next (common practice, no"
                        + " source). Errors of other instruments do not cancel. " + Matter.rule());
        section.small(
                "The results are of these units alone, as they were when tested. Copy only the whole comparison.");
    }
}
