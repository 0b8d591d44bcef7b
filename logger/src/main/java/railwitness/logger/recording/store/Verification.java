package railwitness.logger.recording.store;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.DoubleConsumer;

/**
 * Whether a session is as it was recorded.
 *
 * @param faults what is not, one sentence each, the first at most twenty; empty when it is intact
 * @param firstSecond second of the session's axis from which on it is not as recorded, where that can be told
 * @param readings how many readings were looked at
 * @param links how many digests of the chain were worked out again
 * @param seal digest of the whole chain, 64 hexadecimal digits, to be held against the certificate's
 * @param state how far the session came; an interrupted one can be intact
 */
public record Verification(
        List<String> faults, OptionalLong firstSecond, long readings, long links, String seal, SessionState state) {
    public Verification {
        faults = List.copyOf(faults);
    }

    /**
     * Works out everything that follows from the recording again: chain, packed minutes, summaries, digests of sheets.
     *
     * @throws StoreException when the file cannot be opened as a session
     */
    public static Verification of(Path file) {
        return of(file, share -> {});
    }

    /**
     * The same.
     *
     * @param progress told often which share of the digests is worked out, 0 to 1; what it throws ends the work
     */
    public static Verification of(Path file, DoubleConsumer progress) {
        return Verifier.verify(file, progress);
    }

    public boolean isIntact() {
        return faults.isEmpty();
    }

    /** The answer in one line. */
    public String words() {
        if (isIntact()) {
            return "intact: " + readings + " readings, " + links + " digests, seal " + seal + ending();
        }
        return "not intact"
                + (firstSecond.isPresent() ? " from second " + firstSecond.getAsLong() + " on" : "")
                + ": " + String.join("; ", faults) + ending();
    }

    private String ending() {
        return switch (state) {
            case INTERRUPTED ->
                "; interrupted: the recording was cut off and never brought to an end, so what came after"
                        + " its last second is not in it";
            case RUNNING -> "; still being recorded";
            default -> "";
        };
    }
}
