package railwitness.safety.campaign;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import railwitness.drivers.bench.Bench;
import railwitness.drivers.instrument.WorkerMaker;
import railwitness.drivers.line.SerialLine;
import railwitness.drivers.rehearsal.StandIn;
import railwitness.drivers.rehearsal.Trouble;
import railwitness.drivers.rehearsal.VirtualBench;
import railwitness.drivers.scpi.ExchangeLog;
import railwitness.drivers.time.RealScheduler;
import railwitness.drivers.time.VirtualScheduler;

/**
 * Every instrument, at every moment of a run, with every trouble. Safe is: the output is off at the far end, or the
 * person was told that it could not be switched off and to open the disconnect. Prints a table. Arguments: seeds on the
 * virtual clock, cases over pseudo-terminals in real time, one trouble alone.
 */
final class FaultCampaign {
    private static final Duration LONGEST = Duration.ofMinutes(12);

    record Case(String instrument, Trouble trouble, SmallRun.Moment moment, long seed) {}

    record Ending(
            Case what,
            boolean over,
            boolean tripped,
            boolean completed,
            boolean offAtFarEnd,
            boolean told,
            List<String> words) {
        boolean safe() {
            return over && (offAtFarEnd || told);
        }
    }

    private FaultCampaign() {}

    public static void main(String[] arguments) {
        int seeds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2;
        int real = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 0;
        String only = arguments.length > 2 ? arguments[2] : "";
        List<Case> cases = cases(seeds).stream()
                .filter(one -> only.isEmpty() || one.trouble().name().equals(only))
                .toList();
        System.out.println("On the virtual clock:\n");
        System.out.println(table(cases.stream().map(FaultCampaign::virtual).toList()));
        if (real > 0) {
            System.out.println("Over pseudo-terminals in real time:\n");
            System.out.println(
                    table(sample(cases, real).stream().map(FaultCampaign::real).toList()));
        }
        System.exit(0);
    }

    static List<Case> cases(int seeds) {
        List<Case> cases = new ArrayList<>();
        for (long seed = 1; seed <= seeds; seed++) {
            for (String instrument : CampaignBench.INSTRUMENTS) {
                for (Trouble trouble : Trouble.values()) {
                    for (SmallRun.Moment moment : SmallRun.Moment.values()) {
                        cases.add(new Case(instrument, trouble, moment, seed));
                    }
                }
            }
        }
        return cases;
    }

    static List<Case> sample(List<Case> cases, int count) {
        List<Case> all = new ArrayList<>(cases);
        java.util.Collections.shuffle(all, new Random(7));
        return all.subList(0, Math.min(count, all.size()));
    }

    static Ending virtual(Case what) {
        VirtualScheduler scheduler = new VirtualScheduler(Instant.parse("2026-11-25T10:00:00Z"));
        VirtualBench far = CampaignBench.virtual(what.seed(), scheduler::nowNanos);
        Map<String, String> devices = new HashMap<>();
        CampaignBench.INSTRUMENTS.forEach(name -> devices.put(name, name));
        Bench bench = Bench.open(
                CampaignBench.sheet(devices),
                far.opener(scheduler),
                scheduler,
                WorkerMaker.inline(scheduler),
                ExchangeLog.none());
        SmallRun run = new SmallRun(scheduler, bench, moment -> inject(what, moment, far, scheduler.nowNanos()));
        run.run(LONGEST);
        return ending(what, run, far);
    }

    static Ending real(Case what) {
        RealScheduler scheduler = new RealScheduler();
        VirtualBench far = CampaignBench.virtual(what.seed(), scheduler::nowNanos);
        Map<String, String> devices = new HashMap<>();
        try (StandIn standIn = new StandIn(far, (name, on) -> {})) {
            standIn.places().forEach(place -> devices.put(place.name(), place.device()));
            try (Bench bench = Bench.open(
                    CampaignBench.sheet(devices),
                    SerialLine::open,
                    scheduler,
                    WorkerMaker.threaded(scheduler),
                    ExchangeLog.none())) {
                SmallRun run =
                        new SmallRun(scheduler, bench, moment -> inject(what, moment, far, scheduler.nowNanos()));
                run.run(Duration.ofMinutes(1));
                return ending(what, run, far);
            }
        }
    }

    private static void inject(Case what, SmallRun.Moment moment, VirtualBench far, long nowNanos) {
        if (moment == what.moment()) {
            long offset = new Random(what.toString().hashCode() * 31L + what.seed()).nextInt(300) * 1_000_000L;
            boolean atOnce = moment.compareTo(SmallRun.Moment.SWITCHING_OFF) >= 0;
            long from = nowNanos + (atOnce ? 0 : offset);
            far.instrument(what.instrument()).trouble(what.trouble(), from);
            if (what.trouble() == Trouble.SAYS_OFF && what.seed() % 2 == 0) {
                far.instrument(what.instrument()).trouble(Trouble.IGNORES_OFF, from); // says off while on
            }
        }
    }

    private static Ending ending(Case what, SmallRun run, VirtualBench far) {
        boolean completed = run.words().contains("end of the run");
        boolean off = !far.supply("supply").isOn();
        return new Ending(what, run.isOver(), run.tripped(), completed, off, run.told(), run.words());
    }

    static String table(List<Ending> endings) {
        StringBuilder text = new StringBuilder(
                "| trouble | cases | tripped | ended otherwise | ran to its end | off at the far end | still on, person"
                        + " told | told though off | unsafe |\n|---|---|---|---|---|---|---|---|---|\n");
        for (Trouble trouble : Trouble.values()) {
            text.append(row(
                    trouble.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                    endings.stream()
                            .filter(ending -> ending.what().trouble() == trouble)
                            .toList()));
        }
        text.append(row("all", endings));
        endings.stream()
                .filter(ending -> !ending.safe())
                .forEach(ending -> text.append("UNSAFE ").append(ending).append('\n'));
        return text.toString();
    }

    private static String row(String name, List<Ending> some) {
        return "| " + name + " | " + some.size() + " | "
                + some.stream().filter(Ending::tripped).count() + " | "
                + some.stream()
                        .filter(one -> !one.tripped() && !one.completed())
                        .count() + " | "
                + some.stream().filter(one -> !one.tripped() && one.completed()).count() + " | "
                + some.stream().filter(Ending::offAtFarEnd).count() + " | "
                + some.stream().filter(one -> !one.offAtFarEnd() && one.told()).count() + " | "
                + some.stream().filter(one -> one.offAtFarEnd() && one.told()).count() + " | "
                + some.stream().filter(one -> !one.safe()).count() + " |\n";
    }
}
