package railwitness.logger.reporting.exporting;

/** Hears how far an export is; called often. */
@FunctionalInterface
public interface ExportListener {
    /**
     * @param share of the session's time that is written, 0 to 1
     * @param readings written so far
     */
    void at(double share, long readings);
}
