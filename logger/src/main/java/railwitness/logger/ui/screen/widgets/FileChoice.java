package railwitness.logger.ui.screen.widgets;

import java.awt.Component;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;

/** Asks the person for a file or a folder; only while no run goes on, for it takes the keyboard. */
public final class FileChoice {
    private final Component beside;
    private final Path folder;

    /** @param folder shown first */
    public FileChoice(Component beside, Path folder) {
        this.beside = beside;
        this.folder = folder;
    }

    /** A file that is there. */
    public Optional<Path> open(String title) {
        JFileChooser chooser = chooser(title);
        return answer(chooser, chooser.showOpenDialog(beside));
    }

    /** A file to be made. */
    public Optional<Path> save(String title, Path usual) {
        JFileChooser chooser = chooser(title);
        chooser.setSelectedFile(usual.toFile());
        return answer(chooser, chooser.showSaveDialog(beside));
    }

    /** A folder, there already or to be made. */
    public Optional<Path> folder(String title, Path usual) {
        JFileChooser chooser = chooser(title);
        chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
        chooser.setSelectedFile(usual.toFile());
        return answer(chooser, chooser.showSaveDialog(beside));
    }

    private JFileChooser chooser(String title) {
        JFileChooser chooser = new JFileChooser(folder.toFile());
        chooser.setDialogTitle(title);
        return chooser;
    }

    private static Optional<Path> answer(JFileChooser chooser, int pressed) {
        return pressed == JFileChooser.APPROVE_OPTION
                ? Optional.of(chooser.getSelectedFile().toPath())
                : Optional.empty();
    }
}
