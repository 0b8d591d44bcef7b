package railwitness.logger.reporting.manual;

import railwitness.logger.reporting.certificate.Face;
import railwitness.logger.reporting.certificate.Furniture;
import railwitness.logger.reporting.certificate.Tone;
import railwitness.logger.reporting.certificate.Typesetter;

/** A number at the foot of every page, and nothing else. */
final class ManualFurniture implements Furniture {
    private static final float SIZE = 8;

    @Override
    public void head(Typesetter type, int number) {
        // nothing stands there
    }

    @Override
    public void foot(Typesetter type, int number, int of) {
        float line = type.bottom() + 11;
        type.rule(type.left(), type.right(), line, 0.6f, Tone.STRONG_RULE);
        type.text("Railwitness", Face.REGULAR, SIZE, Tone.MUTED, type.left(), line + 12);
        type.textRight("page " + number + " of " + of, Face.REGULAR, SIZE, Tone.MUTED, type.right(), line + 12);
    }
}
