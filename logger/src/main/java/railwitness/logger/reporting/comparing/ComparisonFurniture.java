package railwitness.logger.reporting.comparing;

import railwitness.logger.reporting.certificate.Face;
import railwitness.logger.reporting.certificate.Furniture;
import railwitness.logger.reporting.certificate.Tone;
import railwitness.logger.reporting.certificate.Typesetter;

/** What stands on every page of a comparison. */
record ComparisonFurniture(String number, boolean rehearsal, String digest) implements Furniture {
    private static final float SIZE = 8;

    @Override
    public void head(Typesetter type, int number) {
        if (number == 1) {
            return;
        }
        float line = type.y() + SIZE;
        type.text(
                (rehearsal ? "REHEARSAL \u00b7 " : "") + "Comparison",
                Face.REGULAR,
                SIZE,
                Tone.MUTED,
                type.left(),
                line);
        type.textRight("No. " + this.number, Face.REGULAR, SIZE, Tone.MUTED, type.right(), line);
        type.rule(type.left(), type.right(), line + 6, 0.6f, Tone.STRONG_RULE);
        type.down(SIZE + 22);
    }

    @Override
    public void foot(Typesetter type, int page, int of) {
        float line = type.bottom() + 11;
        type.rule(type.left(), type.right(), line, 0.6f, Tone.STRONG_RULE);
        type.text("Digest of all sessions compared " + digest, Face.REGULAR, 7.5f, Tone.MUTED, type.left(), line + 12);
        type.textRight("page " + page + " of " + of, Face.REGULAR, SIZE, Tone.MUTED, type.right(), line + 12);
    }
}
