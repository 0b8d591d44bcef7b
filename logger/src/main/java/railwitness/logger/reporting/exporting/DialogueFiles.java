package railwitness.logger.reporting.exporting;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import railwitness.drivers.scpi.Exchange;
import railwitness.drivers.scpi.ExchangeText;
import railwitness.logger.recording.store.InstrumentEntry;
import railwitness.logger.recording.store.SessionFile;
import railwitness.logger.recording.store.StoreException;

/**
 * The exchange log of a session to be sent to somebody: a text for each instrument, with maker and serial number taken out
 * wherever they stand, and nothing of unit, people, places or readings.
 */
public final class DialogueFiles {
    private static final String MAKER = "Maker";
    private static final String SERIAL = "0";

    private DialogueFiles() {}

    /**
     * Writes the files into a folder of their own.
     *
     * @param folder to make; must not be there yet
     * @return how many instruments were written
     * @throws ExportException when the folder is there or cannot be made
     */
    public static int write(Path session, Path folder) {
        try (SessionFile file = SessionFile.open(session)) {
            if (Files.exists(folder)) {
                throw new ExportException(
                        folder + " is already there and is never written over; choose another folder");
            }
            Files.createDirectory(folder);
            int written = 0;
            for (InstrumentEntry one : file.instruments()) {
                List<Exchange> log = log(file, one.name());
                if (!log.isEmpty()) {
                    written++;
                    String name = String.format(Locale.ROOT, "%02d-%s.txt", written, one.kind());
                    Files.writeString(folder.resolve(name), nameless(ExchangeText.of(log), one));
                }
            }
            return written;
        } catch (IOException e) {
            throw new StoreException("folder " + folder + " cannot be written (" + e.getMessage() + ")", e);
        }
    }

    private static List<Exchange> log(SessionFile file, String instrument) {
        List<Exchange> log = new ArrayList<>();
        file.exchanges(entry -> {
            if (entry.instrument().equals(instrument)) {
                log.add(new Exchange(entry.nanos(), "", false, entry.sent(), entry.received(), ""));
            }
        });
        return log;
    }

    private static String nameless(String text, InstrumentEntry one) {
        return taken(
                taken(text, one.identity().serial(), SERIAL), one.identity().maker(), MAKER);
    }

    private static String taken(String text, String what, String instead) {
        return what.isBlank() || what.equals(SERIAL) ? text : text.replace(what, instead);
    }
}
