package railwitness.logger.reporting.certificate;

/** Weights and slants in which a certificate is set. */
public enum Face {
    REGULAR("Roboto-Regular"),
    MEDIUM("Roboto-Medium"),
    ITALIC("Roboto-Italic");

    private final String postscriptName;

    Face(String postscriptName) {
        this.postscriptName = postscriptName;
    }

    String postscriptName() {
        return postscriptName;
    }
}
