package railwitness.logger.reporting.certificate;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * What the square on a certificate says.
 *
 * @param number of the certificate, with its issue
 * @param digest of the session, 64 hexadecimal digits
 */
public record SquareText(String number, String digest) {
    private static final String BEGIN = "railwitness certificate ";
    private static final Pattern SAID =
            Pattern.compile("railwitness certificate (.{1,120})\nsession digest ([0-9a-f]{64})");
    private static final long MOST_BYTES = 40_000_000;

    String text() {
        return BEGIN + number + "\nsession digest " + digest;
    }

    static SquareText of(Evidence evidence) {
        return new SquareText(evidence.number() + ", issue " + evidence.issue().number(), evidence.seal());
    }

    /** Whether a file is a picture by its first bytes: PNG or JPEG. */
    public static boolean isPicture(Path file) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (var in = Files.newInputStream(file)) {
            byte[] first = in.readNBytes(4);
            return first.length == 4
                    && ((first[0] & 0xFF) == 0x89 && first[1] == 'P' && first[2] == 'N' && first[3] == 'G'
                            || (first[0] & 0xFF) == 0xFF && (first[1] & 0xFF) == 0xD8);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * Reads a photograph or a scan.
     *
     * @throws CertificateException when it cannot be read or no certificate's square is seen in it
     */
    public static SquareText in(Path picture) {
        if (picture.toFile().length() > MOST_BYTES) {
            throw new CertificateException(
                    picture + ": is larger than " + MOST_BYTES / 1_000_000 + " MB; take a smaller" + " picture");
        }
        try {
            BufferedImage image = ImageIO.read(picture.toFile());
            if (image == null) {
                throw new CertificateException(picture + ": cannot be read as a picture; save it as PNG or JPEG");
            }
            return SquareCode.in(image)
                    .flatMap(SquareText::said)
                    .orElseThrow(() -> new CertificateException(picture
                            + ": no square of a certificate can be read in it; photograph it nearer, flat and in even"
                            + " light, or type the digest with --digest"));
        } catch (IOException | IllegalArgumentException e) {
            throw new CertificateException(picture + ": cannot be read as a picture (" + e.getMessage() + ")", e);
        }
    }

    private static Optional<SquareText> said(String text) {
        Matcher matcher = SAID.matcher(text);
        return matcher.matches() ? Optional.of(new SquareText(matcher.group(1), matcher.group(2))) : Optional.empty();
    }
}
