package railwitness.logger.recording.importing;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import railwitness.analysis.design.Design;
import railwitness.drivers.bench.BenchSheet;
import railwitness.logger.recording.event.EventKind;
import railwitness.logger.recording.event.SessionEvent;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.store.SessionHead;
import railwitness.logger.recording.store.SessionState;
import railwitness.logger.recording.store.SessionWriter;

/**
 * A table of readings on its way to be a session of its own.
 *
 * @param form how it is written
 * @param design sheet to go with it; without one nothing is compared
 * @param bench sheet to go with it; without one the accuracy is unknown
 */
public record TableSession(
        Path table, TableForm form, Optional<SheetText<Design>> design, Optional<SheetText<BenchSheet>> bench) {
    private static final int SHOWN = 8;

    /**
     * Makes the session; nothing of it is left where that does not come to its end.
     *
     * @param out file to make
     * @param head told what the first rows say, gives the head of the session
     * @param progress told often which share of the table is read, 0 to 1; what it throws ends the import
     * @return how many readings were taken
     * @throws ImportException with row and column of the first fault
     * @throws railwitness.logger.recording.store.StoreException when the session cannot be made
     */
    public long write(Path out, Function<TableStart, SessionHead> head, DoubleConsumer progress) throws IOException {
        TableStart start = TableStart.of(table, form);
        String digest = digest();
        SessionWriter writer = SessionWriter.create(out, own(head.apply(start), digest));
        try {
            design.ifPresent(sheet -> writer.sheet(sheet.kind(), sheet.fileName(), sheet.text()));
            bench.ifPresent(sheet -> writer.sheet(sheet.kind(), sheet.fileName(), sheet.text()));
            writer.event(
                    0,
                    new SessionEvent.Said(
                            EventKind.IMPORT,
                            "readings taken from " + table.getFileName() + " (SHA-256 " + digest + ")"));
            long readings = TableImport.into(writer, table, form, start.wall(), progress);
            writer.finish(SessionState.COMPLETE);
            return readings;
        } catch (RuntimeException e) {
            writer.close();
            Files.deleteIfExists(out);
            throw e;
        }
    }

    /** A session of its own, whatever session the table was exported from. */
    private static SessionHead own(SessionHead head, String digest) {
        return new SessionHead(
                head.id() + "-imported-" + digest.substring(0, SHOWN),
                head.startedWall(),
                head.zone(),
                head.rehearsal(),
                head.programVersion(),
                head.acknowledgedBy(),
                head.unitName(),
                head.unitSerial(),
                head.unitCondition());
    }

    private String digest() throws IOException {
        try (InputStream in = Files.newInputStream(table)) {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            byte[] piece = new byte[1 << 16];
            for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                sha.update(piece, 0, read);
            }
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
