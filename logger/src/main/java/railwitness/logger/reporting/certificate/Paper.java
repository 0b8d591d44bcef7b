package railwitness.logger.reporting.certificate;

/** The sheet a certificate is printed on; sizes in points of 1/72 inch. */
public enum Paper {
    /** 210 mm x 297 mm (ISO 216). */
    A4(595.276f, 841.890f),
    /** 8.5 in x 11 in. */
    LETTER(612, 792);

    private final float width;
    private final float height;

    Paper(float width, float height) {
        this.width = width;
        this.height = height;
    }

    float width() {
        return width;
    }

    float height() {
        return height;
    }
}
