package railwitness.logger.reporting.certificate;

/** What stands on every page: the rehearsal's mark, head and foot; on the first page the square for machines. */
final class PageFurniture implements Furniture {
    /** So much higher is the foot of the first page, pt. */
    static final float FIRST_FOOT_MORE = 56;

    private static final float SMALL = 7.5f;
    private static final float CAPTION = 8;
    private static final float SQUARE = 72;

    private final Evidence evidence;

    PageFurniture(Evidence evidence) {
        this.evidence = evidence;
    }

    @Override
    public void head(Typesetter type, int number) {
        if (evidence.rehearsal()) {
            type.across("REHEARSAL", Tone.MARK);
        }
        if (number == 1) {
            return;
        }
        Faces faces = type.faces();
        float line = type.y() + CAPTION;
        String serial = evidence.session().head().unitSerial();
        String right = (serial.isEmpty() ? "" : "serial " + serial + " \u00b7 ") + "No. " + evidence.number()
                + ", issue " + evidence.issue().number();
        String shown = faces.clipped(faces.clean(right), Face.REGULAR, CAPTION, type.width() * 0.62f);
        float rightWidth = faces.width(shown, Face.REGULAR, CAPTION);
        String left = (evidence.rehearsal() ? "REHEARSAL \u00b7 " : "") + "Test certificate \u00b7 "
                + evidence.session().head().unitName();
        type.text(
                faces.clipped(faces.clean(left), Face.REGULAR, CAPTION, type.width() - rightWidth - 16),
                Face.REGULAR,
                CAPTION,
                Tone.MUTED,
                type.left(),
                line);
        type.textRight(shown, Face.REGULAR, CAPTION, Tone.MUTED, type.right(), line);
        type.rule(type.left(), type.right(), line + 6, 0.6f, Tone.STRONG_RULE);
        type.down(CAPTION + 22);
    }

    @Override
    public void foot(Typesetter type, int number, int of) {
        boolean first = number == 1;
        float line = type.paper().height() - 55 - (first ? FIRST_FOOT_MORE : 0);
        float x = type.left() + (first ? SQUARE + 12 : 0);
        type.rule(type.left(), type.right(), line, 0.6f, Tone.STRONG_RULE);
        String seal = Digest.grouped(evidence.seal());
        if (first) {
            type.fill(SquareCode.of(SquareText.of(evidence).text(), type.left(), line + 8, SQUARE), Tone.INK);
            int half = seal.length() / 2;
            type.text("Session digest " + seal.substring(0, half), Face.REGULAR, SMALL, Tone.INK, x, line + 15);
            float indent = type.faces().width("Session digest ", Face.REGULAR, SMALL);
            type.text(seal.substring(half + 1), Face.REGULAR, SMALL, Tone.INK, x + indent, line + 25);
            type.text("Sheets: " + sheets(), Face.REGULAR, SMALL, Tone.MUTED, x, line + 37);
            type.text(
                    "The square holds number, issue and digest: 'verify' with the session reads it from a photograph.",
                    Face.REGULAR,
                    SMALL,
                    Tone.MUTED,
                    x,
                    line + 48);
        } else {
            type.text("Session digest " + seal, Face.REGULAR, SMALL, Tone.MUTED, x, line + 12);
        }
        type.textRight(
                "Page " + number + " of " + of,
                Face.REGULAR,
                CAPTION,
                Tone.MUTED,
                type.right(),
                line + (first ? 25 : 12));
        type.text(
                "The results are of this unit alone, as it was when tested. Copy only the whole certificate.",
                Face.REGULAR,
                SMALL,
                Tone.MUTED,
                x,
                line + (first ? 59 : 23));
    }

    private String sheets() {
        return evidence.sheets().isEmpty()
                ? "none"
                : String.join(
                        ", ",
                        evidence.sheets().stream()
                                .map(sheet -> sheet.kind() + " "
                                        + Digest.of(sheet.text()).substring(0, 12))
                                .limit(4)
                                .toList());
    }
}
