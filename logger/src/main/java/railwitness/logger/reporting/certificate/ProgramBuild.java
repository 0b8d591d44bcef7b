package railwitness.logger.reporting.certificate;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.List;
import railwitness.analysis.findings.Findings;
import railwitness.drivers.bench.BenchSheet;
import railwitness.safety.caution.Caution;

/** Which program this is: its version, and a digest of all that works figures out and sets pages. */
final class ProgramBuild {
    private static final int SHOWN = 8;
    private static final String WORDS = words();

    private ProgramBuild() {}

    /** Such as "0.1.0, build 3f9a01bc"; "unreleased" where it does not run from its jars. */
    static String text() {
        return WORDS;
    }

    private static String words() {
        String version = ProgramBuild.class.getPackage().getImplementationVersion();
        StringBuilder all = new StringBuilder();
        for (Class<?> part : List.of(ProgramBuild.class, Findings.class, Caution.class, BenchSheet.class)) {
            try {
                CodeSource source = part.getProtectionDomain().getCodeSource();
                Path jar = source == null ? null : Path.of(source.getLocation().toURI());
                if (version == null || jar == null || !Files.isRegularFile(jar)) {
                    return "unreleased";
                }
                all.append(Digest.of(Files.readAllBytes(jar)));
            } catch (IOException | URISyntaxException | RuntimeException e) {
                return version == null ? "unreleased" : version;
            }
        }
        return version + ", build " + Digest.of(all.toString()).substring(0, SHOWN);
    }
}
