package railwitness.logger.recording.store;

/**
 * One exchange with an instrument, as far as it is worth keeping.
 *
 * @param nanos when it began, ns
 * @param instrument its name in the bench sheet
 * @param sent what went out
 * @param received what came back; empty when nothing did
 * @param trouble what was wrong with it; empty when nothing was
 */
public record ExchangeEntry(long nanos, String instrument, String sent, String received, String trouble)
        implements Entry {}
