package railwitness.logger.campaign;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Prints every table that the documentation states, one after the other, each by a process of its own:
 * {@code mvn -Pbenchmarks verify -DskipTests}. Arguments: {@code short} for small numbers that only show that each table
 * can still be made; then words, of which a table's name must contain one. Ends with 1 when one could not be printed.
 */
final class Benchmarks {
    /**
     * One table.
     *
     * @param main the class that prints it
     * @param whole arguments of the documented table
     * @param small arguments that take some seconds
     */
    record Table(String main, String whole, String small) {
        boolean isWanted(List<String> words) {
            return words.isEmpty() || words.stream().anyMatch(main::contains);
        }
    }

    static final List<Table> TABLES = List.of(
            new Table("railwitness.drivers.converter.SolverPaceTable", "200 1", "3 1"),
            new Table("railwitness.drivers.instrument.ReplyFuzz", "10000000 1", "20000 1"),
            new Table("railwitness.drivers.line.ForeignReplies", "100000 1", "200 1"),
            new Table("railwitness.safety.campaign.TripBenchmark", "10000", "20"),
            new Table("railwitness.safety.guardian.GuardianBenchmark", "100 20 64", "1 1 16"),
            new Table("railwitness.safety.campaign.FaultCampaign", "2 42", "0 1"),
            new Table("railwitness.analysis.uncertainty.MixtureCoverage", "4000 4711", "50 4711"),
            new Table("railwitness.analysis.uncertainty.StraightLineProperties", "3000", "50"),
            new Table("railwitness.analysis.reference.CauseStudy", "last-look", "last-look"),
            new Table("railwitness.analysis.soak.WarmUpCampaign", "2000", "20"),
            new Table("railwitness.logger.reporting.findings.BurnInTable", "72", "0.5"),
            new Table("railwitness.logger.reporting.findings.CoverageStudy", "10000 25000", "20 25000"),
            new Table("railwitness.logger.reporting.findings.ConfusionStudy", "20 7", "1 7"),
            new Table("railwitness.logger.reporting.findings.ForgeryStudy", "50 13", "1 13"),
            new Table("railwitness.logger.reporting.certificate.AlterationCampaign", "1000 1", "5 1"),
            new Table("railwitness.logger.ui.command.AlteredSessions", "60 2000 1", "1 2 1"),
            new Table("railwitness.logger.ui.command.HostileCampaign", "1", "40"),
            new Table("railwitness.logger.campaign.MutatedFiles", "30000 10000 1", "20 20 1"),
            new Table("railwitness.logger.campaign.FaultCampaign", "1 48 3", "0 1 1"),
            new Table("railwitness.logger.campaign.OneMeterCampaign", "5 101", "1 101"),
            new Table("railwitness.logger.campaign.WoundCampaign", "200 500 1000", "2 2 1000"),
            new Table("railwitness.logger.recording.store.RateTable", "20000000", "200000"),
            new Table("railwitness.logger.recording.store.PaceTable", "300", "3"),
            new Table("railwitness.logger.recording.store.LongTable", "2000000 2", "20000 1"),
            new Table("railwitness.logger.recording.store.SoakTable", "72", "1"),
            new Table("railwitness.logger.recording.store.KillTable", "200", "1"),
            new Table("railwitness.logger.recording.store.PowerCutTable", "20", "1"),
            new Table("railwitness.logger.ui.screen.window.StallTable", "60 2", "3 2"),
            new Table("railwitness.logger.ui.screen.window.ZoomTable", "20000000", "50000"));

    private Benchmarks() {}

    public static void main(String... arguments) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(Arrays.asList(arguments));
        words.removeIf(String::isBlank);
        boolean small = words.remove("short");
        List<String> failed = new ArrayList<>();
        for (Table table : TABLES) {
            if (table.isWanted(words) && !print(table.main(), small ? table.small() : table.whole())) {
                failed.add(table.main());
            }
        }
        failed.forEach(name -> System.out.println("not printed, or not as it must be: " + name));
        System.exit(failed.isEmpty() ? 0 : 1);
    }

    private static boolean print(String main, String arguments) throws IOException, InterruptedException {
        System.out.println();
        System.out.println("== " + main + " " + arguments);
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                main.endsWith("SoakTable") ? "-Xmx64m" : "-Xmx1g",
                "--add-opens",
                "java.base/java.util=ALL-UNNAMED",
                "-cp",
                classPath(),
                main));
        command.addAll(List.of(arguments.split(" ")));
        return new ProcessBuilder(command).inheritIO().start().waitFor() == 0;
    }

    /** This program's own and the other rooms' tests, seen from the folder of all rooms. */
    private static String classPath() {
        return Stream.of("drivers", "safety", "analysis")
                .map(room -> Path.of(room, "target", "test-classes").toString())
                .collect(Collectors.joining(
                        File.pathSeparator, System.getProperty("java.class.path") + File.pathSeparator, ""));
    }
}
