package railwitness.logger.reporting.certificate;

import java.util.List;

/** Headings and running text of the inner pages. */
public final class Section {
    public static final float TEXT = 9;
    public static final float SMALL = 8;
    public static final float DENSE = 7.6f;
    private static final float HEADING = 11.5f;

    private final Typesetter type;

    public Section(Typesetter type) {
        this.type = type;
    }

    /** Begins a section; goes on to a new page unless its heading and so much text find room. */
    public void begin(String heading, float keep) {
        if (type.room() < HEADING + 26 + keep) {
            type.newPage();
        } else if (type.y() > 80) {
            type.down(14);
        }
        type.heading(
                "H2",
                heading,
                () -> type.text(heading, Face.MEDIUM, HEADING, Tone.INK, type.left(), type.y() + HEADING));
        type.down(HEADING + 9);
    }

    public void paragraph(String text) {
        paragraph(List.of(Span.plain(text)));
    }

    public void paragraph(List<Span> spans) {
        Paragraph.of(type.faces(), TEXT, type.width(), spans).flow(type, type.left());
        type.down(4);
    }

    public void small(String text) {
        Paragraph.of(type.faces(), SMALL, type.width(), List.of(Span.muted(text)))
                .flow(type, type.left());
        type.down(3);
    }
}
