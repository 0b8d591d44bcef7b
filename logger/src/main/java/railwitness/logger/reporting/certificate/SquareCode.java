package railwitness.logger.reporting.certificate;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.EncodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The square on the first page (QR code, ISO/IEC 18004): drawn, and read from a photograph. */
final class SquareCode {
    private static final int LARGEST_SIDE = 1600;

    private SquareCode() {}

    /** The dark modules as one shape, its upper left corner at a place, side as long as asked, pt. */
    static Shape of(String text, double x, double y, double side) {
        try {
            BitMatrix bits = new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            1,
                            1,
                            Map.of(
                                    EncodeHintType.MARGIN,
                                    0,
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8",
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M));
            double module = side / bits.getWidth();
            Path2D.Double shape = new Path2D.Double();
            for (int row = 0; row < bits.getHeight(); row++) {
                for (int column = 0; column < bits.getWidth(); column++) {
                    int from = column;
                    while (column < bits.getWidth() && bits.get(column, row)) {
                        column++;
                    }
                    if (column > from) {
                        shape.append(
                                new java.awt.geom.Rectangle2D.Double(
                                        x + from * module, y + row * module, (column - from) * module, module),
                                false);
                    }
                }
            }
            return shape;
        } catch (WriterException e) {
            throw new CertificateException("the square code cannot be made: " + e.getMessage(), e);
        }
    }

    /** What the code in a picture says; empty where none is found. Several sizes and thresholds are tried. */
    static Optional<String> in(BufferedImage image) {
        return Stream.of(1.0, 0.5, 0.25, 2.0)
                .map(scale -> scaled(image, scale))
                .map(SquareCode::read)
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static BufferedImage scaled(BufferedImage image, double wanted) {
        double scale = wanted * Math.min(1, LARGEST_SIDE * 2.0 / Math.max(image.getWidth(), image.getHeight()));
        int width = (int) Math.max(1, Math.round(image.getWidth() * scale));
        int height = (int) Math.max(1, Math.round(image.getHeight() * scale));
        BufferedImage smaller = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        var ground = smaller.createGraphics();
        ground.setRenderingHint(
                java.awt.RenderingHints.KEY_INTERPOLATION, java.awt.RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        ground.drawImage(image, 0, 0, width, height, java.awt.Color.WHITE, null);
        ground.dispose();
        return smaller;
    }

    private static Optional<String> read(BufferedImage image) {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        LuminanceSource source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
        Map<DecodeHintType, Object> hints =
                Map.of(DecodeHintType.TRY_HARDER, true, DecodeHintType.CHARACTER_SET, "UTF-8");
        for (var binarizer : java.util.List.of(new HybridBinarizer(source), new GlobalHistogramBinarizer(source))) {
            try {
                return Optional.of(new QRCodeReader()
                        .decode(new BinaryBitmap(binarizer), hints)
                        .getText());
            } catch (ReaderException e) {
                // The next way may see it.
            }
        }
        return Optional.empty();
    }
}
