package railwitness.logger.reporting.certificate;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;

/**
 * A workshop's own head: a picture and a few words, out of a folder with {@code logo.png} (or {@code logo.jpg}) and
 * {@code text.txt}; either may be lacking.
 *
 * @param text one line, set beside the title; empty for none
 */
public record Letterhead(Optional<BufferedImage> logo, String text) {
    private static final int MOST_PIXELS = 4_000_000;
    private static final int MOST_LETTERS = 200;

    /** @throws CertificateException when there is no such folder, or neither file in it, or one cannot be read */
    public static Letterhead in(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new CertificateException(
                    folder + ": there is no such folder; the letterhead's has logo.png and" + " text.txt");
        }
        Optional<Path> picture = file(folder, "logo.png").or(() -> file(folder, "logo.jpg"));
        Optional<Path> words = file(folder, "text.txt");
        if (picture.isEmpty() && words.isEmpty()) {
            throw new CertificateException(folder + ": has neither logo.png, logo.jpg nor text.txt");
        }
        return new Letterhead(
                picture.map(Letterhead::image), words.map(Letterhead::words).orElse(""));
    }

    private static Optional<Path> file(Path folder, String name) {
        return Optional.of(folder.resolve(name)).filter(Files::isRegularFile);
    }

    private static BufferedImage image(Path file) {
        try {
            BufferedImage image = ImageIO.read(new File(file.toString()));
            if (image == null) {
                throw new CertificateException(file + ": is no picture that can be read; save it as PNG");
            }
            if ((long) image.getWidth() * image.getHeight() > MOST_PIXELS) {
                throw new CertificateException(file + ": has " + image.getWidth() + " x " + image.getHeight()
                        + " pixels; make it smaller, " + MOST_PIXELS / 1_000_000 + " million are enough for print");
            }
            return opaque(image);
        } catch (IOException e) {
            throw new CertificateException(file + ": cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** On white: paper for keeping bears no transparency that readers could show in different ways. */
    private static BufferedImage opaque(BufferedImage image) {
        BufferedImage white = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        var ground = white.createGraphics();
        ground.drawImage(image, 0, 0, java.awt.Color.WHITE, null);
        ground.dispose();
        return white;
    }

    private static String words(Path file) {
        try {
            String text = Files.readString(file).strip().replaceAll("\\s+", " ");
            return text.length() <= MOST_LETTERS ? text : text.substring(0, MOST_LETTERS);
        } catch (IOException e) {
            throw new CertificateException(file + ": cannot be read as text in UTF-8 (" + e.getMessage() + ")", e);
        }
    }
}
