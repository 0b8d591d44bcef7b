package railwitness.logger.campaign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import railwitness.drivers.winding.WoundFault;

/**
 * Rehearses the transformer plan with each fault in seeded places and sizes, and with sound transformers: how many are
 * named rightly, how many sound ones are accused.
 */
public final class WoundCampaign {
    private WoundCampaign() {}

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
                Locale.ROOT, "%-18s seed %d, %d cases: %.1f %% named rightly %s%n", fault.code(), seed, cases, right, named);
        return right;
    }

    /** How many of so many sound ones are accused of anything. */
    static int accused(int cases, long seed, Path folder) throws IOException {
        int accused = 0;
        for (int i = 0; i < cases; i++) {
            Path file = folder.resolve("sound" + i + ".session");
            WoundCase one = i % 5 == 0 ? WoundCase.of("plan.toml", seed + i) : WoundCase.alone(seed + i);
            Optional<String> found = WoundCase.named(one.rehearsed(Optional.empty(), file));
            found.ifPresent(code -> System.out.println("a sound one is accused: " + code));
            accused += found.isPresent() ? 1 : 0;
            Files.delete(file);
        }
        System.out.printf(Locale.ROOT, "sound              seed %d, %d cases: %d accused%n", seed, cases, accused);
        return accused;
    }
}
