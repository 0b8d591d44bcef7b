package railwitness.logger.ui.screen.form;

import java.awt.Component;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import railwitness.logger.recording.sheet.SheetDraft;
import railwitness.logger.recording.sheet.SheetKind;
import railwitness.logger.recording.sheet.Sheets;
import railwitness.logger.ui.screen.stage.Asker;
import railwitness.logger.ui.screen.stage.Question;
import railwitness.logger.ui.screen.stage.WindowModel;
import railwitness.logger.ui.screen.widgets.FileChoice;
import railwitness.logger.ui.screen.widgets.Words;

/** Opens and saves sheets. A file that the person has not opened or saved here is not replaced unasked. */
public final class SheetFiles {
    private final WindowModel desk;
    private final Asker asker;
    private final Component face;
    private final Set<Path> ours = new HashSet<>();

    public SheetFiles(WindowModel desk, Asker asker, Component face) {
        this.desk = desk;
        this.asker = asker;
        this.face = face;
    }

    /** Lets the person choose a file, of whichever kind of sheet. */
    public void open() {
        choice().open(Words.of("act.sheet.open")).ifPresent(this::open);
    }

    private void open(Path file) {
        desk.work(() -> SheetKind.check(file), kind -> open(file, kind), desk::message);
    }

    private void open(Path file, SheetKind kind) {
        if (!desk.unsaved(kind)) {
            read(file, kind);
            return;
        }
        asker.ask(new Question(
                "lose",
                Words.of("sheet.lose." + kind),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("sheet.lose.no"), typed -> {}),
                        new Question.Answer(Words.of("sheet.lose.yes"), typed -> read(file, kind)))));
    }

    private void read(Path file, SheetKind kind) {
        Sheets now = desk.sheets();
        desk.work(
                () -> with(now, file, kind),
                sheets -> {
                    ours.add(file.toAbsolutePath());
                    desk.remembered()
                            .put("sheet." + kind.name(), file.toAbsolutePath().toString());
                    desk.sheets(sheets);
                },
                desk::message);
    }

    /** The sheets with the one of this kind replaced. */
    private static Sheets with(Sheets now, Path file, SheetKind kind) {
        return switch (kind) {
            case DESIGN -> new Sheets(Sheets.design(file), now.bench(), now.plan());
            case BENCH -> new Sheets(now.design(), Sheets.bench(file), now.plan());
            case PLAN -> new Sheets(now.design(), now.bench(), Sheets.plan(file));
        };
    }

    /** @param saved told the file's name once its text is kept there */
    public void save(SheetDraft<?> draft, Consumer<String> saved) {
        Path usual = desk.folder().resolve(draft.good().fileName());
        choice().save(Words.of("act.sheet.save"), usual)
                .ifPresent(file -> save(file.toAbsolutePath(), draft.text(), name -> {
                    desk.remembered()
                            .put(
                                    "sheet." + draft.kind().name(),
                                    file.toAbsolutePath().toString());
                    saved.accept(name);
                }));
    }

    private FileChoice choice() {
        return new FileChoice(face, desk.folder());
    }

    private void save(Path file, String text, Consumer<String> saved) {
        if (!Files.exists(file) || ours.contains(file)) {
            write(file, text, saved);
            return;
        }
        asker.ask(new Question(
                "replace",
                Words.of("sheet.replace", file.getFileName()),
                Optional.empty(),
                List.of(
                        new Question.Answer(Words.of("sheet.replace.no"), typed -> {}),
                        new Question.Answer(Words.of("sheet.replace.yes"), typed -> write(file, text, saved)))));
    }

    private void write(Path file, String text, Consumer<String> saved) {
        desk.work(
                () -> {
                    Files.createDirectories(file.getParent());
                    return Files.writeString(file, text);
                },
                path -> {
                    ours.add(file);
                    saved.accept(file.getFileName().toString());
                    desk.message(Words.of("unit.saved", path));
                },
                desk::message);
    }
}
