package railwitness.logger.reporting.certificate;

/** What stands on every page beside its content. */
public interface Furniture {
    /** @param number of the page, from 1 */
    void head(Typesetter type, int number);

    /** @param of how many pages there are */
    void foot(Typesetter type, int number, int of);
}
