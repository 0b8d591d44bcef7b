package railwitness.logger.reporting.certificate;

/** What stands on every page: the rehearsal's mark, head and foot. */
final class PageFurniture {
    private static final float SMALL = 6.6f;
    private static final float CAPTION = 8;

    private final Evidence evidence;

    PageFurniture(Evidence evidence) {
        this.evidence = evidence;
    }

    void head(Typesetter type, int number) {
        if (evidence.session().head().rehearsal()) {
            type.across("REHEARSAL", Tone.MARK);
        }
        if (number == 1) {
            return;
        }
        Faces faces = type.faces();
        String no = "No. " + evidence.session().head().id();
        float noWidth = faces.width(faces.clean(no), Face.REGULAR, CAPTION);
        String unit = faces.clipped(
                faces.clean("Test certificate \u00b7 " + evidence.unit()),
                Face.REGULAR,
                CAPTION,
                type.width() - noWidth - 20);
        type.text(unit, Face.REGULAR, CAPTION, Tone.MUTED, type.left(), type.y() + CAPTION);
        type.textRight(
                faces.clipped(faces.clean(no), Face.REGULAR, CAPTION, type.width() / 2),
                Face.REGULAR,
                CAPTION,
                Tone.MUTED,
                type.right(),
                type.y() + CAPTION);
        type.rule(type.left(), type.right(), type.y() + CAPTION + 6, 0.6f, Tone.STRONG_RULE);
        type.down(CAPTION + 22);
    }

    void foot(Typesetter type, int number, int of) {
        float line = type.paper().height() - 55;
        type.rule(type.left(), type.right(), line, 0.6f, Tone.STRONG_RULE);
        type.text(
                "Session digest " + Digest.grouped(evidence.seal()),
                Face.REGULAR,
                SMALL,
                Tone.MUTED,
                type.left(),
                line + 12);
        type.textRight("Page " + number + " of " + of, Face.REGULAR, CAPTION, Tone.MUTED, type.right(), line + 12);
        type.text(
                "The results are of this unit alone, as it was when tested. Copy only the whole certificate.",
                Face.REGULAR,
                SMALL,
                Tone.MUTED,
                type.left(),
                line + 22);
    }
}
