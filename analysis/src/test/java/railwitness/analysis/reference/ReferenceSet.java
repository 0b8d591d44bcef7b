package railwitness.analysis.reference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import railwitness.analysis.design.Design;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.analysis.uncertainty.Estimate;
import railwitness.analysis.uncertainty.Influence;

/**
 * Supplies of our own as a circuit simulator (ngspice) works them out, sound and with faults; how they were made stands in
 * {@code supplies/README.md} beside them. The part 'building' was used to find the forward model's errors, the
 * part 'last-look' was looked at once, by the code as it stands.
 */
public final class ReferenceSet {
    /** One recording. */
    public record Unit(String half, String design, String fault, String seed, List<OperatingPoint> points, Path sheet) {
        /** Code of the fault, or 'sound'. */
        public String code() {
            return fault.split("-at-|-(?=[0-9])|--")[0];
        }

        @Override
        public String toString() {
            return design + " " + fault + " " + seed;
        }
    }

    private ReferenceSet() {}

    /** Where the recordings stand. */
    public static Path folder() {
        String elsewhere = System.getProperty("supplies");
        if (elsewhere != null) {
            return Path.of(elsewhere);
        }
        try {
            return Path.of(ReferenceSet.class
                    .getResource("/railwitness/analysis/supplies")
                    .toURI());
        } catch (java.net.URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Recordings of one part: {@code building} or {@code last-look}. */
    public static List<Unit> half(String half, double relative) {
        try (Stream<Path> designs = Files.list(folder().resolve(half))) {
            List<Unit> units = new ArrayList<>();
            for (Path design : designs.sorted().toList()) {
                try (Stream<Path> files = Files.list(design)) {
                    for (Path file : files.sorted().toList()) {
                        if (file.toString().endsWith(".csv")) {
                            units.add(unit(half, design, file, relative));
                        }
                    }
                }
            }
            return units;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The unit's sheet, as much of it as a person might know. */
    public static Design design(Unit unit, ReferenceSheet.Knowledge known) {
        try {
            return new ReferenceSheet(Files.readAllLines(unit.sheet())).design(known);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Unit unit(String half, Path design, Path file, double relative) throws IOException {
        String name = file.getFileName().toString().replace(".csv", "");
        String seed = name.substring(name.lastIndexOf('-') + 1);
        String fault = name.substring(0, name.lastIndexOf('-'));
        List<String> lines = Files.readAllLines(file, StandardCharsets.UTF_8);
        List<OperatingPoint> points = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            points.add(point(line.replaceAll("\"([^\",]*),([^\"]*)\"", "$1;$2").split(","), relative));
        }
        return new Unit(half, design.getFileName().toString(), fault, seed, points, design.resolve("sheet.toml"));
    }

    private static OperatingPoint point(String[] cells, double relative) {
        double seconds = Double.parseDouble(cells[0]);
        return OperatingPoint.of(cells[1], cells[2])
                .during(seconds, seconds + 1)
                .inputVoltage(value("input.voltage", cells[3], relative))
                .inputCurrent(value("input.current", cells[4], relative))
                .railVoltage("plus", value("plus.voltage", cells[5], relative))
                .railCurrent("plus", value("plus.current", cells[6], relative))
                .railVoltage("minus", value("minus.voltage", cells[7], relative))
                .railCurrent("minus", value("minus.current", cells[8], relative))
                .ripple("plus", value("plus.ripple", cells[9], 10 * relative))
                .ripple("minus", value("minus.ripple", cells[10], 10 * relative))
                .build();
    }

    private static Estimate value(String name, String text, double relative) {
        double value = Double.parseDouble(text);
        return relative == 0
                ? Estimate.exact(value)
                : Estimate.of(
                        value, Influence.normal(name + " meter", relative, "1").times(value));
    }
}
