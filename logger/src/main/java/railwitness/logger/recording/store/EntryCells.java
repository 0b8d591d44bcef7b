package railwitness.logger.recording.store;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** Turns entries into the cells of their tables. */
final class EntryCells {
    private EntryCells() {}

    static Object[] of(SessionHead h) {
        return new Object[] {
            h.id(),
            h.startedWall().toString(),
            h.zone().getId(),
            h.rehearsal() ? 1L : 0L,
            h.programVersion(),
            h.acknowledgedBy(),
            h.unitName(),
            h.unitSerial(),
            h.unitCondition()
        };
    }

    static Object[] of(SheetEntry s) {
        return new Object[] {s.kind(), s.fileName(), s.text(), digest(s.kind(), s.fileName(), s.text())};
    }

    static Object[] of(InstrumentEntry i) {
        return new Object[] {
            i.name(),
            i.kind(),
            i.port(),
            i.dialect(),
            i.identity().maker(),
            i.identity().model(),
            i.identity().serial(),
            i.identity().firmware(),
            i.accuracy()
        };
    }

    static Object[] of(StepEntry s) {
        return new Object[] {
            s.stage(),
            s.step(),
            s.beginNanos(),
            s.average().map(TimeSpan::fromNanos).orElse(null),
            s.average().map(TimeSpan::toNanos).orElse(null),
            s.settled() ? 1L : 0L,
            s.outcome().words(),
            s.reason(),
            s.inputVolts().isPresent() ? s.inputVolts().getAsDouble() : null
        };
    }

    static Object[] of(WaveformEntry w, long channelSeq) {
        double[] values = w.waveform().values();
        ByteBuffer samples = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        samples.asDoubleBuffer().put(values);
        return new Object[] {
            w.nanos(), channelSeq, w.waveform().startSeconds(), w.waveform().stepSeconds(), samples.array()
        };
    }

    /** SHA-256 over kind, file name and text in UTF-8, each followed by a byte of zero. */
    static byte[] digest(String... parts) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            for (String part : parts) {
                sha.update(part.getBytes(StandardCharsets.UTF_8));
                sha.update((byte) 0);
            }
            return sha.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
