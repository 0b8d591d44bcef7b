package railwitness.logger.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import railwitness.analysis.supply.OperatingPoint;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.logger.reporting.findings.SessionFindings;

/**
 * Whether every point of a session is one that the same bench measures when nothing goes wrong: what an instrument says
 * after it reset itself, with its leads reversed or while it stands still must not become a point.
 */
final class TruePoints {
    private static final Set<Trouble> LYING = Set.of(Trouble.RESETS, Trouble.REVERSED_LEADS, Trouble.FROZEN);
    private static final double SHARE = 0.03;
    private static final double AMPS = 0.1;
    private static final double VOLTS = 0.3;
    private static final Map<String, List<OperatingPoint>> HEALTHY = new ConcurrentHashMap<>();

    private TruePoints() {}

    /** What is not true in it, in words. */
    static List<String> against(FaultCase what, SessionFindings findings) {
        List<String> wrong = new ArrayList<>();
        if (!LYING.contains(what.trouble())) {
            return wrong;
        }
        List<OperatingPoint> healthy = HEALTHY.computeIfAbsent(
                what.seed() + " " + what.sparse(), key -> FaultySession.healthy(what.seed(), what.sparse()));
        for (OperatingPoint point : findings.findings().points()) {
            healthy.stream()
                    .filter(one -> one.stage().equals(point.stage())
                            && one.step().equals(point.step())
                            && one.count() == point.count())
                    .findFirst()
                    .ifPresent(one -> compare(point, one, wrong));
        }
        return wrong;
    }

    private static void compare(OperatingPoint point, OperatingPoint healthy, List<String> wrong) {
        String where = point.stage() + " " + point.step() + " ";
        check(
                where + "input V",
                point.input().voltage().value(),
                healthy.input().voltage().value(),
                VOLTS,
                wrong);
        check(
                where + "input A",
                point.input().current().value(),
                healthy.input().current().value(),
                AMPS,
                wrong);
        healthy.rails().forEach((name, rail) -> {
            if (point.rails().containsKey(name)) {
                var read = point.rails().get(name);
                check(
                        where + name + " V",
                        read.voltage().value(),
                        rail.voltage().value(),
                        VOLTS,
                        wrong);
                check(
                        where + name + " A",
                        read.current().value(),
                        rail.current().value(),
                        AMPS,
                        wrong);
            }
        });
    }

    private static void check(String what, double read, double healthy, double least, List<String> wrong) {
        if (Math.abs(read - healthy) > SHARE * Math.abs(healthy) + least) {
            wrong.add("false point: " + what + " " + read + ", healthy " + healthy);
        }
    }
}
