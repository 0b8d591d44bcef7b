package railwitness.logger.ui.screen.window;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import railwitness.logger.recording.sheet.SheetKind;
import railwitness.logger.recording.sheet.SheetText;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.stage.WindowModel;

/** The sheets from one time to the next: where they were kept, and those that are kept when the window closes. */
final class KeptSheets {
    private static final String PLACE = "sheet.";

    private KeptSheets() {}

    /** Keeps every changed sheet in the folder, never in place of another file; slow. */
    static List<Path> keep(WindowModel desk) throws IOException {
        List<Path> kept = new ArrayList<>();
        Files.createDirectories(desk.folder());
        for (SheetKind kind : SheetKind.values()) {
            if (desk.unsaved(kind)) {
                SheetText<?> sheet = of(desk.sheets(), kind);
                Path file = free(desk.folder(), sheet.fileName());
                Files.writeString(file, sheet.text());
                desk.remembered().put(PLACE + kind.name(), file.toAbsolutePath().toString());
                kept.add(file);
            }
        }
        return kept;
    }

    private static SheetText<?> of(Sheets sheets, SheetKind kind) {
        return switch (kind) {
            case DESIGN -> sheets.design();
            case BENCH -> sheets.bench();
            case PLAN -> sheets.plan();
        };
    }

    private static Path free(Path folder, String name) {
        Path wanted = folder.resolve(name);
        for (int i = 2; Files.exists(wanted); i++) {
            int dot = name.lastIndexOf('.');
            String stem = dot < 0 ? name : name.substring(0, dot);
            wanted = folder.resolve(stem + "-" + i + (dot < 0 ? "" : name.substring(dot)));
        }
        return wanted;
    }

    /** Lays the sheets of the last time on the desk; one that is not there any more is left out. */
    static void lay(WindowModel desk) {
        Sheets sheets = desk.sheets();
        boolean any = false;
        for (SheetKind kind : SheetKind.values()) {
            Optional<Path> place =
                    desk.remembered().get(PLACE + kind.name()).map(Path::of).filter(Files::isReadable);
            if (place.isPresent()) {
                try {
                    sheets = with(sheets, kind, place.get());
                    any = true;
                } catch (RuntimeException unreadable) {
                    desk.message(railwitness.logger.ui.screen.widgets.Trouble.words(unreadable));
                }
            }
        }
        if (any) {
            desk.sheets(sheets);
        }
    }

    private static Sheets with(Sheets now, SheetKind kind, Path file) {
        return switch (kind) {
            case DESIGN -> new Sheets(Sheets.design(file), now.bench(), now.plan());
            case BENCH -> new Sheets(now.design(), Sheets.bench(file), now.plan());
            case PLAN -> new Sheets(now.design(), now.bench(), Sheets.plan(file));
        };
    }
}
