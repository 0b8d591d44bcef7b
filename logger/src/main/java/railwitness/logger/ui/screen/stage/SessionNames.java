package railwitness.logger.ui.screen.stage;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import railwitness.logger.recording.sheet.Sheets;

/** How the file of a new session is called. */
public final class SessionNames {
    private static final DateTimeFormatter DATED =
            DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss", Locale.ROOT).withZone(ZoneId.systemDefault());
    /** How the name of every session's file ends. */
    public static final String ENDING = ".session";

    private SessionNames() {}

    /** A name from serial number and time. */
    public static Path fresh(Path folder, Sheets sheets, boolean rehearsal, Instant now) {
        var unit = sheets.design().content().unit();
        String what = unit.serial().orElse(unit.name()).replaceAll("[^\\p{Alnum}._-]+", "-");
        return folder.resolve((rehearsal ? "rehearsal-" : "") + what + "-" + DATED.format(now) + ENDING);
    }
}
