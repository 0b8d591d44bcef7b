package railwitness.logger.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railwitness.analysis.design.FigureName;
import railwitness.drivers.winding.Coil;
import railwitness.drivers.winding.Half;
import railwitness.drivers.winding.WoundFault;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Rehearses the transformer plan with each fault in seeded places and sizes, and with sound transformers: how many are
 * named rightly, how many sound ones are accused.
 */
public final class WoundCampaign {
    /** Of each figure of sound ones: how often its interval at 95 % held the truth, of how many. */
    private static final Map<FigureName, int[]> COVERED = new TreeMap<>();

    /** Of the sample's design sheet. */
    private static final double NOMINAL_VOLTS = 13.8;

    private WoundCampaign() {}

    private static void cover(WoundCase one, SessionFindings found) {
        truth(one.sound()).forEach((name, truth) -> found.findings()
                .figure(name, Optional.empty())
                .filter(figure -> figure.value().known())
                .ifPresent(figure -> {
                    int[] count = COVERED.computeIfAbsent(name, first -> new int[2]);
                    double off = Math.abs(figure.value().value() - truth);
                    count[0] += off <= figure.value().coverage(0.95).expanded() ? 1 : 0;
                    count[1]++;
                }));
    }

    private static Map<FigureName, Double> truth(Coil coil) {
        double turns = coil.turns().get(Half.PRIMARY_A);
        double ratio = coil.turns().get(Half.SECONDARY_A) / turns;
        Map<FigureName, Double> truth = new TreeMap<>(Map.of(
                FigureName.PRIMARY_A_RESISTANCE,
                coil.ohms20().get(Half.PRIMARY_A),
                FigureName.PRIMARY_B_RESISTANCE,
                coil.ohms20().get(Half.PRIMARY_B),
                FigureName.SECONDARY_A_RESISTANCE,
                coil.ohms20().get(Half.SECONDARY_A),
                FigureName.SECONDARY_B_RESISTANCE,
                coil.ohms20().get(Half.SECONDARY_B),
                FigureName.HALF_A_RATIO,
                ratio,
                FigureName.HALF_B_RATIO,
                ratio,
                FigureName.SECONDARY_HALVES_DIFFER,
                0.0,
                FigureName.MAGNETISING_INDUCTANCE,
                coil.henriesPerTurn() * turns * turns + coil.primaryLeakHenry(),
                FigureName.LEAKAGE_INDUCTANCE,
                coil.primaryLeakHenry() + coil.secondaryLeakHenry() / (2 * ratio * ratio)));
        truth.put(FigureName.PRIMARY_HALVES_DIFFER, 0.0);
        truth.put(FigureName.CORE_LOSS, NOMINAL_VOLTS * NOMINAL_VOLTS / (coil.coreOhmPerTurn() * turns * turns));
        return truth;
    }

    /** @param arguments cases of each fault; sound ones; first seed */
    public static void main(String... arguments) throws IOException {
        int cases = Integer.parseInt(arguments[0]);
        int sound = Integer.parseInt(arguments[1]);
        long seed = Long.parseLong(arguments[2]);
        Path folder = Files.createTempDirectory("wound");
        boolean good = true;
        for (WoundFault fault : WoundFault.values()) {
            double right = right(fault, cases, seed, folder);
            good &= right >= 95;
        }
        int accused = accused(sound, seed, folder);
        COVERED.forEach((name, count) -> System.out.printf(
                Locale.ROOT, "| %s | %.1f | %d |%n", name.word(), 100.0 * count[0] / count[1], count[1]));
        Files.deleteIfExists(folder);
        System.exit(good && accused == 0 ? 0 : 1);
    }

    /** Share of a fault's cases in which it is the first one named, in per cent. */
    static double right(WoundFault fault, int cases, long seed, Path folder) throws IOException {
        Map<String, Integer> named = new TreeMap<>();
        for (int i = 0; i < cases; i++) {
            WoundCase one =
                    fault == WoundFault.WEAK_CORE ? WoundCase.of("plan.toml", seed + i) : WoundCase.alone(seed + i);
            Path file = folder.resolve(fault.code() + i + ".session");
            String found = WoundCase.named(one.rehearsed(Optional.of(one.drawn(fault)), file))
                    .orElse("nothing");
            named.merge(found, 1, Integer::sum);
            Files.delete(file);
        }
        double right = 100.0 * named.getOrDefault(fault.code(), 0) / cases;
        System.out.printf(
                Locale.ROOT,
                "%-18s seed %d, %d cases: %.1f %% named rightly %s%n",
                fault.code(),
                seed,
                cases,
                right,
                named);
        return right;
    }

    /** How many of so many sound ones are accused of anything. */
    static int accused(int cases, long seed, Path folder) throws IOException {
        int accused = 0;
        for (int i = 0; i < cases; i++) {
            Path file = folder.resolve("sound" + i + ".session");
            WoundCase one = i % 5 == 0 ? WoundCase.of("plan.toml", seed + i) : WoundCase.alone(seed + i);
            SessionFindings session = one.rehearsed(Optional.empty(), file);
            cover(one, session);
            Optional<String> found = WoundCase.named(session);
            found.ifPresent(code -> System.out.println("a sound one is accused: " + code));
            accused += found.isPresent() ? 1 : 0;
            Files.delete(file);
        }
        System.out.printf(Locale.ROOT, "sound              seed %d, %d cases: %d accused%n", seed, cases, accused);
        return accused;
    }
}
