package railwitness.safety.power;

import java.util.LinkedHashMap;
import java.util.Map;
import railwitness.drivers.time.Scheduler;

/**
 * A unit under test as simple as it can be: rails of three times the input while remote and output are on, capacitors
 * of 4400 uF that fall by a bleeder, by a load, or not at all.
 */
final class StandInUnit {
    static final double STEP_UP = 2.66;

    private final Scheduler scheduler;
    private final Map<String, Double> rails = new LinkedHashMap<>();
    private final Map<String, Double> loadAmps = new LinkedHashMap<>();
    private long lastNanos;

    boolean output;
    boolean remote;
    double volts;
    double bleederSeconds = 14.5;
    String stuckRail = "";
    double idleAmps = 0.6;
    double standbyAmps = 0.002;
    double stepUp = STEP_UP;
    double startVolts = 9;
    /** What the supply's terminals lose while the unit runs, V. */
    double sagVolts;
    /** On for so long of each second; 0 for always. */
    double hiccupSeconds;

    int currentSign = 1;
    final Map<String, Integer> signs = new LinkedHashMap<>(Map.of("plus", 1, "minus", -1));
    final Map<String, Double> shares = new LinkedHashMap<>();

    StandInUnit(Scheduler scheduler) {
        this.scheduler = scheduler;
        rails.put("plus", 0.0);
        rails.put("minus", 0.0);
    }

    void load(String rail, double amps) {
        settle();
        loadAmps.put(rail, amps);
    }

    void output(boolean on) {
        settle();
        output = on;
    }

    double rail(String name) {
        settle();
        return signs.get(name) * shares.getOrDefault(name, 1.0) * rails.get(name);
    }

    double inputVolts() {
        return output ? remote ? volts - sagVolts : volts : 0;
    }

    double inputAmps() {
        settle();
        if (!output) {
            return 0;
        }
        double loads =
                loadAmps.values().stream().mapToDouble(Double::doubleValue).sum();
        return remote ? currentSign * (idleAmps + STEP_UP * loads) : standbyAmps;
    }

    private void settle() {
        double seconds = (scheduler.nowNanos() - lastNanos) / 1e9;
        lastNanos = scheduler.nowNanos();
        rails.replaceAll((name, volts) -> after(name, volts, seconds));
    }

    private boolean resting() {
        return hiccupSeconds > 0 && scheduler.nowNanos() % 1_000_000_000L > hiccupSeconds * 1e9;
    }

    private double after(String name, double before, double seconds) {
        if (output && remote && volts > startVolts && !resting()) {
            return stepUp * inputVolts();
        }
        double kept = name.equals(stuckRail) ? before : before * Math.exp(-seconds / bleederSeconds);
        double drained = name.equals(stuckRail) ? 0 : loadAmps.getOrDefault(name, 0.0) * seconds / 4400e-6;
        return Math.max(0, kept - drained);
    }
}
